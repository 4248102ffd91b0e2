/** Where a caution belongs: the screen or page part whose figures it qualifies. */
export type CautionPlace =
  | 'radio'
  | 'clear-of-hits'
  | 'bands'
  | 'cells'
  | 'lithium'
  | 'air-travel'
  | 'network-power'
  | 'passive-feed'
  | 'cart-power'
  | 'connectors'
  | 'mains'
  | 'drift'
  | 'timecode-level'
  | 'headphones'
  | 'media'
  | 'audio-network'
  | 'snake';

/**
 * Warnings beside the figures, by place. Local codes, licences and qualified people come first: a computed
 * figure permits nothing.
 */
export const CAUTIONS: Readonly<Record<CautionPlace, string>> = {
  radio:
    'Worked out from the frequencies typed in; nothing here listens to the air. Your licence and local rules decide. Scan on site before you transmit.',
  'clear-of-hits':
    'No hit at this spacing is a calculation, not a promise: transmitters close together can make other products.',
  bands:
    'Bands differ by country and change. Check the official table and your licence for this place and date.',
  cells: 'Battery life is as measured or planned. Cold, age and the power setting shorten it.',
  lithium:
    'Never charge damaged or wet batteries, or any battery unattended. Do not mix chemistries or ages in one device; protect the terminals of spares.',
  'air-travel':
    'Rules for flying with batteries change every year and by airline. Check with the airline before you fly.',
  'network-power':
    'Assumes solid copper and negotiated power. Thin, stranded or copper-clad aluminium cable loses more, and so does hot or coiled cable: test the run under load.',
  'passive-feed':
    'A passive feed checks nothing before it powers the wire. Make sure of voltage and pins, and keep it away from other sockets.',
  'cart-power':
    'An estimate. Fuse every lead at the battery, and stay under the lowest rating of wire, connector and device. Check polarity with a meter before the first connection.',
  connectors:
    'The same plug is wired differently by different makers. Check pins, polarity and voltage of each device; never assume.',
  mains:
    'Mains and generators are for a qualified electrician, under the local code. Keep the cart bonded, off wet ground and behind a residual-current device (RCD or GFCI).',
  drift:
    'A worst case from the tolerances given. Heat and cold can do worse: compare against the recorder when in doubt.',
  'timecode-level':
    'A line output is 30 to 40 dB too loud for a microphone input, and may harm it: put a pad in the lead, and begin with the level down.',
  headphones:
    'Timecode in headphones at full level beside an ear harms it. Hold them to the phone, not to your head, and turn them down afterwards.',
  media: 'Do not erase a card until two checked copies exist on separate devices.',
  'audio-network':
    'One direction, sound only: clock and control come on top. Systems mark their priorities differently; mixing marks on one switch can turn them upside down.',
  snake:
    'An older digital layout uses other pins, and locking screws come in two threads that do not fit each other. Ask which before wiring, and test each pin.',
};
