// A second reading of the chain, written for the tests and on nothing of `src`: a person with a stack of cards, one for
// each thing that was said, who lays them in the order of the day and then does them, one after another, on a bench.

/** What somebody does on the bench; ends are outputs of receivers and hardline voices. */
export type Deed =
  | { readonly do: 'take' }
  | { readonly do: 'wear'; readonly pack: string; readonly voice: string | null }
  | { readonly do: 'tune'; readonly channel: string; readonly pack: string | null }
  | { readonly do: 'plug'; readonly plugs: readonly Plug[] }
  | { readonly do: 'throw'; readonly selectors: readonly string[]; readonly position: string }
  | { readonly do: 'send'; readonly input: string; readonly tracks: readonly string[] }
  | { readonly do: 'mute'; readonly part: string; readonly muted: boolean }
  | { readonly do: 'set'; readonly settings: Readonly<Record<string, string | number>> }
  | { readonly do: 'load'; readonly roll: string }
  | { readonly do: 'roll'; readonly recorders: readonly string[] };

export interface Plug {
  readonly end: string;
  readonly input: string | null;
  readonly position: string;
  /** Where nothing is plugged: the recorder at which it is pulled. */
  readonly pulledAt?: string;
}

/** A card: a deed, perhaps put before a take; a deed moved; or cards taken back, which can be cards of this kind too. */
export type Card =
  | { readonly id: string; readonly deeds: readonly Deed[]; readonly before?: string | undefined }
  | { readonly id: string; readonly moves: string; readonly to: string | null }
  | { readonly id: string; readonly takesBack: readonly string[] };

export interface Bench {
  readonly inputs: readonly string[];
  readonly tracks: readonly string[];
  /** The channels of each output that a voice may leave by. */
  readonly carries: ReadonlyMap<string, readonly string[]>;
  /** The selector before an input, where there is one. */
  readonly selectors: ReadonlyMap<string, string>;
  readonly hardlines: ReadonlySet<string>;
  /** The recorder of an input or a track; the only one where there is no other. */
  readonly recorderOf: (part: string) => string;
}

type DeedCard = Extract<Card, { deeds: unknown }>;

/** Whether a card stands: nothing that stands takes it back. Later cards speak of earlier ones only. */
function standing(cards: readonly Card[]): Set<string> {
  const off = new Set<string>();
  for (const card of cards.toReversed()) {
    if ('takesBack' in card && !off.has(card.id)) for (const id of card.takesBack) off.add(id);
  }
  return new Set(cards.map(({ id }) => id).filter((id) => !off.has(id)));
}

/** The cards of deeds in the order of the day. One that was taken back keeps its place for what was put before it. */
function laidOut(cards: readonly Card[], stands: ReadonlySet<string>): DeedCard[] {
  const deeds = cards.filter((card): card is DeedCard => 'deeds' in card);
  const isTake = (id: string): boolean =>
    deeds.some((card) => card.id === id && card.deeds[0]?.do === 'take');
  const places = new Map<string, string>();
  for (const card of cards) {
    const [id, to] =
      'moves' in card ? [card.moves, card.to] : [card.id, 'deeds' in card ? card.before : undefined];
    if (to === undefined || ('moves' in card && !stands.has(card.id))) continue;
    places.delete(id);
    if (to !== null && isTake(to)) places.set(id, to);
  }
  const day = deeds.filter(({ id }) => !places.has(id));
  const waiting = [...places].map(([id, before]) => ({ card: deeds.find((one) => one.id === id)!, before }));
  while (waiting.length > 0) {
    const next = waiting.findIndex(({ before }) => day.some(({ id }) => id === before));
    const [{ card, before }] = waiting.splice(next, 1) as [(typeof waiting)[number]];
    day.splice(
      day.findIndex(({ id }) => id === before),
      0,
      card,
    );
  }
  return day;
}

export interface Sound {
  readonly voice: string;
  readonly muted: boolean;
}

/** A take as the bench has it: what each track hears, in the order of the inputs, and how the recorder stands. */
export interface PlainTake {
  readonly tracks: Record<string, Sound[]>;
  /** The pack of each of these, null for a lead. */
  readonly packs: Record<string, (string | null)[]>;
  /** The packs that somebody wears and a receiver is tuned to. */
  readonly worn: ReadonlyMap<string, readonly string[]>;
  /** What was set by hand; the rest is as the head of the day has it. */
  readonly settings: Readonly<Record<string, string | number>>;
  readonly roll: string;
  /** Who rolled, once that was said. */
  readonly recorders: readonly string[] | null;
}

/** Every take by its id. */
export function recordedBy(bench: Bench, cards: readonly Card[]): Map<string, PlainTake> {
  const stands = standing(cards);
  const worn = new Map<string, string | null>();
  const tuned = new Map<string, string | null>();
  const sockets = new Map<string, string>();
  const thrown = new Map<string, string>();
  const sent = new Map<string, readonly string[]>();
  const muted = new Set<string>();
  let settings: PlainTake['settings'] = {};
  let roll = '';
  let recorders: readonly string[] | null = null;
  const socketOf = (input: string, position: string): string =>
    bench.selectors.has(input) ? `${input} ${position}` : input;

  const act = (deed: Deed): void => {
    switch (deed.do) {
      case 'take':
        return;
      case 'wear':
        worn.set(deed.pack, deed.voice);
        return;
      case 'tune':
        tuned.set(deed.channel, deed.pack);
        return;
      case 'plug':
        // All leads of one deed are pulled before any goes in: two may change places. Each is pulled at the
        // recorder that it goes to, and stays in the other one.
        for (const { end, input, pulledAt } of deed.plugs) {
          const recorder = input === null ? pulledAt : bench.recorderOf(input);
          for (const [socket, there] of sockets) {
            const isThere = bench.recorderOf(socket.split(' ')[0]!) === recorder;
            if (there === end && isThere) sockets.delete(socket);
          }
        }
        for (const { end, input, position } of deed.plugs)
          if (input !== null) sockets.set(socketOf(input, position), end);
        return;
      case 'throw':
        for (const selector of deed.selectors) thrown.set(selector, deed.position);
        return;
      case 'send':
        sent.set(deed.input, deed.tracks);
        return;
      case 'mute':
        if (deed.muted) muted.add(deed.part);
        else muted.delete(deed.part);
        return;
      case 'set':
        settings = { ...settings, ...deed.settings };
        return;
      case 'load':
        roll = deed.roll;
        return;
      case 'roll':
        recorders = deed.recorders;
    }
  };

  const heardAt = (input: string): (Sound & { pack: string | null })[] => {
    const selector = bench.selectors.get(input);
    const end = sockets.get(socketOf(input, (selector && thrown.get(selector)) || 'a'));
    if (end === undefined) return [];
    if (bench.hardlines.has(end)) return [{ voice: end, muted: muted.has(input), pack: null }];
    return (bench.carries.get(end) ?? []).flatMap((channel) => {
      const pack = tuned.get(channel);
      const voice = pack && worn.get(pack);
      return pack && voice ? [{ voice, muted: muted.has(input) || muted.has(pack), pack }] : [];
    });
  };

  const takes = new Map<string, PlainTake>();
  for (const { id, deeds } of laidOut(cards, stands)) {
    if (!stands.has(id)) continue;
    for (const deed of deeds) act(deed);
    if (deeds[0]?.do !== 'take') continue;
    const tracks: Record<string, Sound[]> = Object.fromEntries(bench.tracks.map((track) => [track, []]));
    const packs: PlainTake['packs'] = Object.fromEntries(bench.tracks.map((track) => [track, []]));
    for (const input of bench.inputs) {
      for (const track of sent.get(input) ?? []) {
        tracks[track]?.push(...heardAt(input).map(({ voice, muted }) => ({ voice, muted })));
        packs[track]?.push(...heardAt(input).map(({ pack }) => pack));
      }
    }
    const wearing = new Map<string, string[]>();
    const received = new Set(tuned.values());
    for (const [pack, voice] of worn)
      if (voice && received.has(pack)) wearing.set(voice, [...(wearing.get(voice) ?? []), pack]);
    takes.set(id, { tracks, packs, worn: wearing, settings, roll, recorders });
  }
  return takes;
}
