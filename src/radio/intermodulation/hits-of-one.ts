import type { Carrier } from '../carrier.ts';
import type { Analysis } from './analysis.ts';
import { addHit, addWindow, type HitList, newHitList } from './hit-list.ts';
import { type Lane, laneOf, listens, sweep, transmits } from './lane.ts';
import { checkSpacing, walkTwoTone } from './walk-products.ts';

/** Every hit in which the carrier at `place` is a source or the victim. */
export function hitsOfOne(
  { guards, options }: Analysis,
  carriers: readonly Carrier[],
  place: number,
): HitList {
  const list = newHitList();
  carriers.forEach((_, other) => {
    if (other !== place)
      checkSpacing(carriers, guards, Math.min(place, other), Math.max(place, other), (a, d, distance) =>
        addHit(list, options.mostHeld, 0, distance, a, 0, 0, d),
      );
  });
  const around = aroundPlace(carriers, place);
  const add =
    (listeners: Lane): OnAnyProduct =>
    (family, a, b, c, product, lo, hi) =>
      addWindow(
        list,
        options.mostHeld,
        options.includeOwnVictims,
        listeners,
        family,
        a,
        b,
        c,
        product,
        lo,
        hi,
      );
  if (carriers[place]!.transmitting) twoToneFrom(around, guards, add);
  if (carriers[place]!.victim) twoToneOnto(around, guards, add);
  if (guards.threeToneThirdKhz > 0) threeToneHits(around, guards.threeToneThirdKhz, list, options, add);
  return list;
}

type OnAnyProduct = Parameters<typeof walkTwoTone>[4];
type Add = (listeners: Lane) => OnAnyProduct;

/** The lanes with and without the changed carrier. */
interface Around {
  readonly carriers: readonly Carrier[];
  readonly place: number;
  readonly khz: number;
  readonly sources: Lane;
  readonly doubled: Lane;
  readonly fromTop: Lane;
  readonly listeners: Lane;
  readonly onlySource: Lane;
  readonly onlyDoubled: Lane;
  readonly onlyListener: Lane;
}

function aroundPlace(carriers: readonly Carrier[], place: number): Around {
  const it = carriers[place]!;
  const others = (carrier: Carrier): boolean => carrier !== it && carrier.transmitting;
  const only = (carrier: Carrier): boolean => carrier === it;
  return {
    carriers,
    place,
    khz: it.khz,
    sources: laneOf(carriers, others),
    doubled: laneOf(carriers, others, 2),
    fromTop: laneOf(carriers, others, -1),
    listeners: laneOf(carriers, listens),
    onlySource: laneOf(carriers, (carrier) => only(carrier) && transmits(carrier)),
    onlyDoubled: laneOf(carriers, (carrier) => only(carrier) && transmits(carrier), 2),
    onlyListener: laneOf(carriers, (carrier) => only(carrier) && listens(carrier)),
  };
}

type AllGuards = Analysis['guards'];

/** 2X-B and 3X-2B onto anybody, then 2A-X and 3A-2X onto anybody. */
function twoToneFrom(around: Around, guards: AllGuards, add: Add): void {
  const { sources, doubled, listeners, onlySource, onlyDoubled, place, khz } = around;
  const onAnybody = add(listeners);
  walkTwoTone({ sources, doubled, listeners }, guards, place, khz, onAnybody);
  const onlyX = { sources: onlySource, doubled: onlyDoubled, listeners };
  sources.place.forEach((a, at) => {
    walkTwoTone(onlyX, guards, a, sources.khz[at]!, onAnybody);
  });
}

/** 2A-B and 3A-2B of the others onto X. */
function twoToneOnto(around: Around, guards: AllGuards, add: Add): void {
  const { sources, doubled, onlyListener } = around;
  const onX = add(onlyListener);
  sources.place.forEach((a, at) => {
    walkTwoTone({ sources, doubled, listeners: onlyListener }, guards, a, sources.khz[at]!, onX);
  });
}

/** X+B-C and A+B-X onto anybody, and A+B-C onto X. */
function threeToneHits(
  around: Around,
  guard: number,
  list: HitList,
  options: Analysis['options'],
  add: Add,
): void {
  const { carriers, place, khz, sources, listeners, fromTop } = around;
  const { transmitting, victim } = carriers[place]!;
  const onAnybody = add(listeners);
  sources.place.forEach((a, at) => {
    const aKhz = sources.khz[at]!;
    if (transmitting) {
      const [one, two] = a < place ? [a, place] : [place, a];
      sweep(khz + aKhz, sources, a, a, guard, listeners, (lo, hi, c, product) =>
        onAnybody(2, one, two, c, product, lo, hi),
      );
      // A - X - (-B) falls as B runs down from the top, which is what the sweep needs.
      sweep(aKhz - khz, fromTop, a, a, guard, listeners, (lo, hi, b, product) => {
        if (a < b) onAnybody(2, a, b, place, product, lo, hi);
      });
    }
    // The C whose product lands on X is the C near A + B - X, so here the sources take the place of
    // listeners.
    if (victim)
      sweep(aKhz - khz, fromTop, a, a, guard, sources, (lo, hi, b, product) => {
        if (a < b) addSubtracted(list, options.mostHeld, sources, a, b, place, product, lo, hi);
      });
  });
}

function addSubtracted(
  list: HitList,
  most: number,
  sources: Lane,
  a: number,
  b: number,
  victim: number,
  product: number,
  lo: number,
  hi: number,
): void {
  for (let at = lo; at < hi && !list.isFull; at += 1) {
    const c = sources.place[at]!;
    if (c !== a && c !== b) addHit(list, most, 2, Math.abs(product - sources.khz[at]!), a, b, c, victim);
  }
}
