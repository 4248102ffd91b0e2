import fc from 'fast-check';

// Call sheets made up for the fuzz: what is in them is known, so what is read can be judged.

export interface MadeScene {
  readonly number: string;
  readonly intExt: string;
  readonly set: string;
  readonly dayNight: string;
  readonly pages: string;
  readonly cast: readonly string[];
  readonly synopsis: string;
}

export interface MadePerformer {
  readonly number: string;
  readonly part: string;
  readonly person: string;
  readonly pickUp: string;
  readonly onSet: string;
}

export interface MadeSheet {
  readonly text: string;
  readonly scenes: readonly MadeScene[];
  readonly cast: readonly MadePerformer[];
}

const SETS = ['KITCHEN', 'FARM YARD', 'HARBOUR OFFICE', 'STATION - PLATFORM', 'BARN LOFT', 'OLD MILL'];
const STORIES = ['The letter arrives.', 'She waits for the boat, and sings.', 'Nobody is home.', 'They run.'];
const PARTS = ['INES', 'OLD MAN', 'TOMAS', 'THE SWEEP', 'DORA', 'GUARD 2', 'KEEPER', 'FERRYMAN'];
const PERSONS = ['Anna Berg', 'Per Dahl', 'Jon Holm', 'Odd Moe', 'Lea Holm', 'Bo Ek', 'Mira Lind', 'Siv Aas'];
const NOISE = [
  'LUNCH 1300',
  '-- UNIT MOVE --',
  'Weather: mostly dry',
  'SUNRISE 0712  SUNSET 1620',
  'Page 1 of 3',
  'Please bring rain cover.',
  'NOTE: closed set for this scene',
  'Unit base is at the farm, park behind the barn.',
  '______________',
  '12 x Villagers 0700',
  'Wrap 1900',
];

const eighths = fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 1, max: 7 }));
const pages = eighths.map(([whole, part]) => (whole > 0 ? `${whole} ${part}/8` : `${part}/8`));
const clock = fc.tuple(fc.integer({ min: 5, max: 9 }), fc.constantFrom('00', '15', '30', '45'));
const time = (hours: number, minutes: string): string => `${String(hours).padStart(2, '0')}:${minutes}`;

const people = fc
  .tuple(
    fc.shuffledSubarray(PARTS, { minLength: 3, maxLength: 8 }),
    fc.shuffledSubarray(PERSONS, { minLength: 8 }),
    clock,
  )
  .map(([parts, persons, [hour, minutes]]) =>
    parts.map(
      (part, at): MadePerformer => ({
        number: String(at + 1),
        part,
        person: persons[at]!,
        pickUp: time(hour, minutes),
        onSet: time(hour + 2, minutes),
      }),
    ),
  );

const scenesFor = (cast: readonly MadePerformer[]) =>
  fc.uniqueArray(
    fc.record({
      number: fc
        .tuple(fc.integer({ min: 20, max: 120 }), fc.constantFrom('', '', 'A', 'B', 'pt2'))
        .map(([n, letter]) => `${n}${letter}`),
      intExt: fc.constantFrom('INT', 'EXT', 'INT/EXT'),
      set: fc.constantFrom(...SETS),
      dayNight: fc.constantFrom('DAY', 'NIGHT', 'D', 'N2'),
      pages,
      cast: fc
        .shuffledSubarray(
          cast.map(({ number }) => number),
          { minLength: 2 },
        )
        .map((some) => some.sort((a, b) => Number(a) - Number(b))),
      synopsis: fc.constantFrom(...STORIES),
    }),
    { selector: ({ number }) => number, minLength: 3, maxLength: 7 },
  );

const shuffled = <T>(items: readonly T[]) => fc.shuffledSubarray([...items], { minLength: items.length });

const SCENE_HEADINGS = {
  number: 'Scene',
  intExt: 'I/E',
  set: 'Set',
  dayNight: 'D/N',
  pages: 'Pages',
  cast: 'Cast',
  synopsis: 'Synopsis',
} as const;
const CAST_HEADINGS = {
  number: 'No',
  part: 'Character',
  person: 'Artist',
  pickUp: 'P/U',
  onSet: 'On set',
} as const;

/** Whole sheets: columns in any order, with or without headings, noise between the rows. */
export const sheets = ({
  headings,
  noise,
}: {
  headings: readonly ('scenes' | 'cast')[];
  noise: boolean;
}): fc.Arbitrary<MadeSheet> =>
  people.chain((cast) =>
    fc
      .record({
        scenes: scenesFor(cast),
        sceneOrder: shuffled(Object.keys(SCENE_HEADINGS) as (keyof MadeScene)[]),
        castOrder: shuffled(Object.keys(CAST_HEADINGS) as (keyof MadePerformer)[]),
        between: fc.constantFrom('\t', ';', ' | '),
        noises: fc.array(fc.tuple(fc.constantFrom(...NOISE), fc.nat(30)), { maxLength: noise ? 6 : 0 }),
      })
      .map(({ scenes, sceneOrder, castOrder, between, noises }) => {
        const sceneRows = scenes.map((scene) =>
          sceneOrder.map((name) => (name === 'cast' ? scene.cast.join(', ') : scene[name])).join(between),
        );
        const castRows = cast.map((one) => castOrder.map((name) => one[name]).join(between));
        const lines = [
          ...(headings.includes('scenes')
            ? [sceneOrder.map((name) => SCENE_HEADINGS[name]).join(between)]
            : []),
          ...sceneRows,
          '',
          ...(headings.includes('cast') ? [castOrder.map((name) => CAST_HEADINGS[name]).join(between)] : []),
          ...castRows,
        ];
        for (const [text, at] of noises) lines.splice(at % (lines.length + 1), 0, text);
        return { text: lines.join('\n'), scenes, cast };
      }),
  );
