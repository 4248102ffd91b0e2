import { useState } from 'preact/hooks';
import { type InDoubt, isInDoubt } from '../../app/in-doubt.ts';
import { Button } from '../kit/button.tsx';
import { useApp } from './context.ts';
import { InDoubtQuestion } from './in-doubt-question.tsx';
import { complain } from './messages.ts';
import { goTo } from './route.ts';

/** Starts the next day from this one, after showing what is uncertain about it. */
export function NextDay({ from }: { from: string }) {
  const app = useApp();
  const [doubt, setDoubt] = useState<InDoubt | null>(null);
  const start = async (evenInDoubt: boolean): Promise<void> => {
    const result = await app.startFrom(from, { evenInDoubt });
    if (result.ok) goTo({ at: 'day', day: result.value, tab: 'cast' });
    else if (isInDoubt(result.problem)) setDoubt(result.problem);
    else complain(result.problem);
  };
  if (doubt) {
    return (
      <InDoubtQuestion
        doubt={doubt}
        anyway="Start it anyway"
        onAnyway={() => void start(true)}
        onLeave={() => setDoubt(null)}
      />
    );
  }
  return (
    <>
      <Button onClick={() => void start(false)}>Start the next day from this one</Button>
      <p class="soft">The same rig, cast and crew. All packs come off.</p>
    </>
  );
}
