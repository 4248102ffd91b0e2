import { applyWrites, type LinkReader, wornBy, writesOfItem } from '../chain/links.ts';
import { micListed, micOn } from '../chain/mics.ts';
import type { Day, Link, PartId, VoiceId } from '../model.ts';
import { takeText } from '../slate.ts';

/** A mic on a body, from one take until another of its runs begins. */
export interface MicRun {
  /** The name of its pack, where the voice has more than one in the day; else empty. */
  readonly pack: string;
  /** Colour and model, place, cable. */
  readonly listed: readonly string[];
  readonly rubs: string;
  /** As on the day before, which nobody confirmed. */
  readonly carried: boolean;
  /** The first take with it; empty from the first take that the voice wore it on. */
  readonly from: string;
}

interface Run {
  readonly pack: PartId | null;
  readonly said: Omit<MicRun, 'pack' | 'from'>;
  readonly from: string;
}

/** The mics that voices had on takes, or have where there are none yet, as they changed. */
export function micRunsOf(day: Day): ReadonlyMap<VoiceId, readonly MicRun[]> {
  const runs = new Map<VoiceId, Run[]>();
  const links = new Map<string, Link>();
  // Takes with the same mics as the one before have nothing to note.
  let isNoted = false;
  for (const item of day.line) {
    const { fact, takenBack } = item;
    if (fact.kind === 'take-logged') {
      const take = day.takes.get(fact.id);
      if (!take || takenBack || isNoted) continue;
      noteAll(day, links, runs, takeText(take));
      isNoted = true;
    } else if (fact.kind === 'mic-mounted' || fact.kind === 'transmitter-worn') {
      applyWrites(links, fact, writesOfItem(item, links.keys()));
      isNoted = false;
    }
  }
  const atEnd = new Map<VoiceId, Run[]>();
  noteAll(day, links, atEnd, '');
  // Mics are often entered only at wrap: where nothing was said of a voice's mics by its last take, that holds.
  const said = new Map([...atEnd, ...[...runs].filter(([, all]) => isSaid(all))]);
  return new Map([...said].flatMap(([voice, all]) => (isSaid(all) ? [[voice, named(day, all)]] : [])));
}

const isSaid = (runs: readonly Run[]): boolean =>
  runs.some(({ said: { listed, rubs } }) => listed.length > 0 || rubs !== '');

function noteAll(day: Day, links: LinkReader, runs: Map<VoiceId, Run[]>, take: string): void {
  const note = (voice: VoiceId, pack: PartId | null): void => {
    const mic = micOn(links, voice, pack);
    const said = {
      listed: mic ? micListed(mic) : [],
      rubs: mic?.rubs ?? '',
      carried: mic?.carried ?? false,
    };
    const all = runs.get(voice) ?? [];
    const before = all.findLast((run) => run.pack === pack);
    if (before && JSON.stringify(before.said) === JSON.stringify(said)) return;
    runs.set(voice, [...all, { pack, said, from: take }]);
  };
  for (const { id } of day.rig.transmitters) {
    const voice = wornBy(links, id)?.value;
    if (voice != null && day.voices.has(voice)) note(voice, id);
  }
  for (const voice of day.voices.keys()) if (micOn(links, voice, null)) note(voice, null);
}

/** Takes are named from the second run on; of several packs each is named. */
function named(day: Day, runs: readonly Run[]): MicRun[] {
  const packs = new Set(runs.map(({ pack }) => pack));
  return runs.map(({ pack, said, from }, at) => ({
    ...said,
    pack: packs.size > 1 && pack !== null ? (day.rig.byId.get(pack)?.name ?? '') : '',
    from: at > 0 && runs.slice(0, at).some((one) => one.pack === pack || one.from !== from) ? from : '',
  }));
}
