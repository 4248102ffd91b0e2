import { isolated } from '../isolated.ts';
import type { Matter } from '../matter.ts';
import { namesText } from './names-text.ts';

/** One sentence for an open matter. A matter of another room may bring its own `text`. */
export function matterText(said: Matter): string {
  const matter = inIsolates(said);
  const takes = namesText(matter.names ?? []);
  const many = (matter.names?.length ?? 0) > 1;
  switch (matter.code) {
    case 'facts-unknown':
      return `${matter.count} entries were made by a newer version and are missing here.`;
    case 'words-unknown':
      return `What a newer version calls ${takes} is not known here, and nothing was worked out from it.`;
    case 'head-lacks':
      return `Not entered: ${takes}.`;
    case 'take-open':
      return `${takes} ${many ? 'have' : 'has'} no cut.`;
    case 'takes-without-start':
      return `No start time: ${takes}.`;
    case 'takes-without-length':
      return `No length: ${takes}.`;
    case 'takes-numbered-twice':
      return `${matter.names?.[0]} was logged ${many ? `${matter.names!.length} times` : 'twice'}.`;
    case 'files-named-twice':
      return `${fileOf(matter)} of ${takes}.`;
    case 'name-on-two-recorders':
      return `${matter.file} is ${matter.names![0]} on ${matter.name} and ${matter.names![1]} on ${matter.on}${moreFiles(matter)}.`;
    case 'roll-lacking':
      return `No roll entered for ${matter.name}: ${takes}.`;
    case 'on-backup-only':
      return `Not on ${matter.name}, only on a backup: ${takes}.`;
    case 'clash':
      return `Track ${matter.number}: ${matter.name} on one track, not declared a gang: ${takes}.`;
    case 'clash-on-input':
      return `Two voices on ${matter.name}, which feeds no track: ${takes}.`;
    case 'voice-unrecorded':
      return `${matter.name} was on no track: ${takes}.`;
    case 'voice-pack-gone':
      return `${matter.name} gave up a pack and was on no track: ${takes}.`;
    case 'voice-muted':
      return `${matter.name} was needed but muted: ${takes}.`;
    case 'name-typed-over':
      return `Track ${matter.number} is named ${matter.name} by hand, but ${matter.on || 'nobody'} was on it: ${takes}.`;
    default:
      return typeof matter.text === 'string'
        ? matter.text
        : `Not settled: ${matter.code.replaceAll('-', ' ')}.`;
  }
}

/** Isolates typed text so that it can be part of a sentence. */
function inIsolates(matter: Matter): Matter {
  const typed = TYPED.flatMap((field): [string, string][] => {
    const said = matter[field];
    return typeof said === 'string' ? [[field, isolated(said)]] : [];
  });
  return { ...matter, ...Object.fromEntries(typed), names: matter.names?.map(isolated) ?? [] };
}

const TYPED = ['name', 'on', 'file', 'number'];

/** `'24BT3.wav is the file'`, `'24BT3_1.wav is a file'`, `'24BT3_1.wav and 3 more are files'`. */
const fileOf = ({ file, more, isOfSeveral }: Matter): string =>
  more ? `${file} and ${more} more are files` : `${file} is ${isOfSeveral ? 'a' : 'the'} file`;

/** `', and 3 more names are on both'`. */
const moreFiles = ({ more }: Matter): string =>
  !more ? '' : `, and ${more} more ${more === 1 ? 'name is' : 'names are'} on both`;
