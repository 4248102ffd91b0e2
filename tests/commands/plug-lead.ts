import { type CommandResult, type Placing, placed } from '../../src/commands/command.ts';
import type { Lead } from '../../src/day/model.ts';
import { ok } from '../../src/shared/result.ts';

interface Plugging extends Placing, Pick<Lead, 'from' | 'to'>, Partial<Pick<Lead, 'position'>> {
  readonly lead: string;
}

/** Plugs a lead of any name, as older facts and other phones may have: the commands choose the lead themselves. */
export const plugLead = ({ before, ...lead }: Plugging): CommandResult =>
  ok([placed({ kind: 'leads-plugged', leads: [lead] }, { before })]);
