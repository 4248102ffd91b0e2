import type { CommandResult } from '../../src/commands/command.ts';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import type { Day } from '../../src/day/model.ts';
import { readFact } from '../../src/facts/fact.ts';
import type { Problem } from '../../src/shared/result.ts';
import { type Speaker, speaker } from '../day/say.ts';

export interface Laying extends Speaker {
  /** Runs a command on the day as it stands. Throws its problem's code where it fails. */
  run(command: (day: Day) => CommandResult): void;
  newId(): string;
}

/** A phone that runs commands, checking that what they say can be read back. */
export function layingPhone(): Laying {
  const phone = speaker();
  let count = 0;
  return {
    ...phone,
    run(command) {
      const said = command(phone.day());
      if (!said.ok) throw new Error(said.problem.code);
      for (const fact of phone.say(...said.value)) {
        const read = readFact(structuredClone(fact));
        if (!read.ok) throw new Error(`${fact.kind}: ${JSON.stringify(read.problem)}`);
      }
    },
    newId() {
      count += 1;
      return `new${count}`;
    },
  };
}

/** A phone with one of the starting rigs laid. */
export function laidRig(id: string): Laying {
  const phone = layingPhone();
  phone.run(() => STARTING_RIGS.find((rig) => rig.id === id)!.lay());
  return phone;
}

/** Gives every pack of the rig to a performer of its own, named after the pack. */
export function wearEveryPack(phone: Laying): void {
  for (const { id, name } of phone.day().rig.transmitters) {
    phone.say({ kind: 'voice-described', voice: `on-${id}`, fields: { part: `On ${name}` } });
    phone.say({ kind: 'transmitter-worn', transmitter: id, voice: `on-${id}` });
  }
}

export const problemOf = (said: CommandResult): Problem | null => (said.ok ? null : said.problem);

/** For every track the names on it, in order. */
export const trackNames = (day: Day): Record<string, string> =>
  Object.fromEntries(answersNow(day).tracks.map(({ track, name }) => [track.id, name]));
