import { useState } from 'preact/hooks';
import { useApp } from '../frame/context.ts';
import { TextField } from '../kit/field.tsx';

/** Who holds this phone, kept as it is typed: on a day of several phones it stands beside what was entered here. */
export function HolderFields() {
  const place = useApp().parts.holder;
  const [holder, setHolder] = useState(place?.read() ?? { name: '', job: '' });
  const set = (said: Partial<typeof holder>): void => {
    const next = { ...holder, ...said };
    setHolder(next);
    place?.keep(next);
  };
  return (
    <section class="section" aria-labelledby="settings-holder">
      <h2 id="settings-holder">Who holds this phone</h2>
      <TextField
        label="Name"
        value={holder.name}
        capitals="words"
        onInput={(name) => set({ name })}
        hint="Shown beside your entries when a day has several phones, and named in a day file you send."
      />
      <TextField
        label="Job"
        value={holder.job}
        capitals="sentences"
        list="holder-jobs"
        onInput={(job) => set({ job })}
      />
      <datalist id="holder-jobs">
        <option value="Sound mixer" />
        <option value="Boom operator" />
        <option value="Utility" />
      </datalist>
    </section>
  );
}
