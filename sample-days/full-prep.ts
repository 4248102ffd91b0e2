import * as upkeep from '../src/commands/upkeep/describe-runs.ts';
import * as keeping from '../src/commands/upkeep/keep-up.ts';
import * as radio from '../src/commands/upkeep/plan-radio.ts';
import { planShift } from '../src/commands/upkeep/plan-shift.ts';
import type { Story } from './story.ts';

// What the mixer of the full sample day looked after besides the takes: frequencies, cells, timecode, cards, cables.

const GB = 1e9;

/** A set of 17 found by the app, clean with one another. */
const FREQUENCIES_KHZ: Readonly<Record<string, readonly number[]>> = {
  A: [518_000, 518_400, 518_900, 519_500, 519_950, 520_500],
  B: [566_600, 567_400, 568_350, 569_050, 570_200, 570_950, 571_600],
  C: [606_850, 608_050, 608_900, 610_200],
};

const RANGES = [
  ['A', 518_000, 542_000],
  ['B', 566_000, 590_000],
  ['C', 606_000, 614_000],
] as const;

/** A station with a mast on the hill: one TV channel is full of it. */
export function planTheRadio(s: Story): void {
  s.at('15:36').say(() => radio.setGuards({ tvRaster: 'uhf-8-mhz' }));
  s.say((day) =>
    radio.markOccupied(day, 'tv-uhf-8-mhz-31', { name: 'TV 31', fromKhz: 550_000, toKhz: 558_000 }, true),
  );
  for (const [group, fromKhz, toKhz] of RANGES)
    s.say((day) =>
      radio.describeBand(day, `range-${group}`, { use: 'tunable', group, fromKhz, toKhz, rasterKhz: 25 }),
    );
  for (const [letter, found] of Object.entries(FREQUENCIES_KHZ)) {
    const tunings = found.map((khz, at) => ({ transmitter: `${letter}${at + 1}`, khz }));
    s.say((day) => radio.setFrequencies(day, tunings));
  }
}

/** The far box hangs on 85 m of cable along the platform, in the frost; the cart lives on a battery. */
export function runTheCables(s: Story): void {
  s.at('15:44').say((day) =>
    upkeep.describeRun(day, 'far-run', {
      type: 'network',
      name: 'Far box, along the platform',
      metres: 85,
      cable: 'awg-24',
      powerClass: 4,
      watts: 11,
      celsius: -8,
      channels: 8,
      linkMbps: 100,
    }),
  );
  s.say((day) =>
    upkeep.describeRun(day, 'cart-run', {
      type: 'dc',
      name: 'Cart battery',
      metres: 2,
      awg: 14,
      volts: 13.2,
      watts: 55,
      batteryWattHours: 480,
      recorder: s.recorderId('Cart'),
    }),
  );
  s.say((day) =>
    upkeep.describeRun(day, 'bag-run', {
      type: 'dc',
      name: 'Bag battery',
      metres: 0.3,
      awg: 18,
      volts: 14.4,
      watts: 14,
      batteryWattHours: 98,
      recorder: s.recorderId('Bag'),
    }),
  );
  const leads = [...s.day.rig.outputs]
    .filter(({ receiver }) => receiver === 'cart')
    .map(({ id }) => `lead-${id}`);
  s.say(() => upkeep.putOnSnake(leads, 'cart loom', 'analogue'));
}

/** The hours of the night, how long cells last, what has timecode of its own, and the first card. */
export function prepareTheNight(s: Story): void {
  s.at('15:52').say((day, now) => planShift(day, { call: '15:00', meal: '21:10', wrap: '05:00' }, now));
  const packs = (letter: string): string[] => FREQUENCIES_KHZ[letter]!.map((_, at) => `${letter}${at + 1}`);
  s.say((day) => keeping.describeDevices(day, packs('A'), { runtimeHours: 6, runtimeBasis: 'measured' }));
  s.say((day) => keeping.describeDevices(day, packs('B'), { runtimeHours: 10, runtimeBasis: 'planned' }));
  s.say((day) => keeping.describeDevices(day, packs('C'), { runtimeHours: 5, runtimeBasis: 'measured' }));
  s.say(() => keeping.addDevice('slate', { name: 'Slate', hasTimecode: true, ppm: 1 }));
  s.say(() => keeping.addDevice('camera-a', { name: 'Camera A', hasTimecode: true, ppm: 1 }));
  s.say(() => keeping.addDevice('camera-b', { name: 'Camera B', hasTimecode: true, ppm: 1 }));
  s.say((day, now) =>
    keeping.describeCard(day, 'card-1', { name: 'Card 1', bytes: 16 * GB, inAtMs: now.atMs, copies: 0 }),
  );
}

export function beforeTheFirstTake(s: Story): void {
  s.at('16:26').say((day, now) => keeping.freshCells(day, ['A1', 'A2', 'A3', 'A4', 'A5', 'A6'], now));
  s.say((day, now) => keeping.jamDevices(day, ['slate', 'camera-a', 'camera-b'], now));
}

/** The slots come into use with the children. */
export function beforeTheKitchen(s: Story): void {
  s.at('19:24').say((day, now) => keeping.freshCells(day, ['C3', 'C4'], now));
}

/** Fresh cells all round. */
export function duringDinner(s: Story): void {
  s.at('21:31').say((day, now) => keeping.freshCells(day, ['A1', 'A2', 'A3', 'A4', 'A5', 'A6'], now));
  s.say((day, now) => keeping.freshCells(day, ['B1', 'B2', 'B3', 'B4', 'B5', 'B6', 'B7'], now));
}

/** Camera B is out on the platform already, and is left out. */
export function jamAgain(s: Story): void {
  s.at('21:46').say((day, now) => keeping.jamDevices(day, ['slate', 'camera-a'], now));
}

/** Wiktoria stands in the door; nobody thinks of her pack again. */
export function freshForTheDoor(s: Story): void {
  s.at('22:26').say((day, now) => keeping.freshCells(day, ['A1'], now));
}

/** The bag is jammed like a camera, and has a card of its own. */
export function intoTheBag(s: Story): void {
  jammedWithACard(s, 'Bag', 'card-bag');
}

export function theBackup(s: Story): void {
  jammedWithACard(s, 'Backup', 'card-backup');
}

function jammedWithACard(s: Story, name: string, card: string): void {
  const recorder = s.recorderId(name);
  s.say((day) => keeping.describeDevices(day, [recorder], { ppm: 1 }));
  s.say((day, now) => keeping.jamDevices(day, [recorder], now));
  s.say((day, now) =>
    keeping.describeCard(day, card, { name: `${name} card`, bytes: 64 * GB, recorder, inAtMs: now.atMs }),
  );
}

/** Back near the cart: the far packs go off the air, the card is changed. */
export function backAtTheCart(s: Story): void {
  s.at('01:40').say((day) =>
    radio.switchTransmitters(day, ['B1', 'B2', 'B3', 'B4', 'B5', 'B6', 'B7'], false),
  );
  s.say((day, now) => keeping.freshCells(day, ['A2', 'A3', 'A4', 'A5', 'A6', 'C1', 'C3', 'C4'], now));
  s.say((day, now) => keeping.describeCard(day, 'card-1', { outAtMs: now.atMs, copies: 2 }));
  s.say((day, now) =>
    keeping.describeCard(day, 'card-2', {
      name: 'Card 2',
      bytes: 8 * GB,
      usedBytes: 2 * GB,
      inAtMs: now.atMs,
    }),
  );
}

/** Emil, and after him Stoker, wears C2. The packs that nobody needs any more are switched off. */
export function intoTheCarriage(s: Story): void {
  s.say((day, now) => keeping.freshCells(day, ['C2'], now));
  s.say((day) => radio.switchTransmitters(day, ['A6', 'C1'], false));
}

/**
 * The second camera's video link comes on, between the packs: 2 × 519.500 − 521.000 = 518.000 falls on A1, and
 * 2 × 519.950 − 521.000 = 518.900 on A3.
 */
export function theVideoLinkComesOn(s: Story): void {
  s.at('03:52').say((day) =>
    radio.describeCarrier(day, 'video-b', { name: 'Video link B', khz: 521_000, heard: false }),
  );
}
