/**
 * Pairs of invented instruments, B a copy of A with a single fault, and what the fault is: written by hand before the
 * comparison's code was read, from the list of causes that it promises. Samples are named after what `pairSamples` makes.
 */
export interface Pair {
  name: string;
  a: string;
  b: string;
  /** Files that hold something else on B's side, by name: the name of the sample whose bytes they have. */
  otherBytes?: Readonly<Record<string, string>>;
  /** The kind of the cause, and the line of either text that holds it; `null` where that side has none. Nothing where both sound alike. */
  truth: { kind: string; a: number | null; b: number | null; says?: RegExp } | undefined;
}

const three = (first: string, second: string, third: string) =>
  `<global> ampeg_release=0.1\n<region> sample=c4.wav lokey=55 hikey=61 pitch_keycenter=60 ${first}\n<region> sample=e4.wav lokey=62 hikey=66 pitch_keycenter=64 ${second}\n<region> sample=g4.wav lokey=67 hikey=72 pitch_keycenter=67 ${third}\n`;
const plain = three('', '', '');

export const pairs: readonly Pair[] = [
  {
    name: 'half a decibel less in one region',
    a: three('volume=-3', 'volume=-3', 'volume=-3'),
    b: three('volume=-3', 'volume=-3.5', 'volume=-3'),
    truth: { kind: 'level', a: 3, b: 3 },
  },
  {
    name: 'a group gone quiet',
    a: '<group> volume=-6\n<region> sample=c4.wav key=60\n<region> sample=e4.wav key=64\n',
    b: '<group> volume=-8\n<region> sample=c4.wav key=60\n<region> sample=e4.wav key=64\n',
    truth: { kind: 'level', a: 1, b: 1 },
  },
  { name: 'three cents', a: plain, b: three('', '', 'tune=3'), truth: { kind: 'tuning', a: null, b: 4 } },
  {
    name: 'the root a semitone off',
    a: '<region> sample=c4.wav lokey=55 hikey=65 pitch_keycenter=60\n',
    b: '<region> sample=c4.wav lokey=55 hikey=65\npitch_keycenter=61\n',
    truth: { kind: 'root', a: 1, b: 2 },
  },
  {
    name: 'the other side',
    a: three('pan=-20', '', ''),
    b: three('pan=20', '', ''),
    truth: { kind: 'pan', a: 2, b: 2 },
  },
  {
    name: 'another file',
    a: plain,
    b: plain.replace('sample=e4.wav', 'sample=e4other.wav'),
    truth: { kind: 'sample', a: 3, b: 3 },
  },
  {
    name: 'the same name, another recording',
    a: plain,
    b: plain,
    otherBytes: { 'g4.wav': 'g4other.wav' },
    truth: { kind: 'sample', a: 4, b: 4 },
  },
  {
    name: 'left and right swapped in the file',
    a: '<region> sample=wide.wav key=60\n',
    b: '<region> sample=wide.wav key=60\n',
    otherBytes: { 'wide.wav': 'wideSwapped.wav' },
    truth: { kind: 'sample', a: 1, b: 1, says: /left and right|channels/i },
  },
  {
    name: 'five milliseconds cut from the start',
    a: three('', 'offset=0', ''),
    b: three('', 'offset=220', ''),
    truth: { kind: 'offset', a: 3, b: 3 },
  },
  { name: 'an early end', a: plain, b: three('end=20000', '', ''), truth: { kind: 'length', a: null, b: 2 } },
  {
    name: 'a loop one frame too long',
    a: three('loop_mode=loop_continuous loop_start=10000 loop_end=20000', '', ''),
    b: three('loop_mode=loop_continuous loop_start=10000 loop_end=20001', '', ''),
    truth: { kind: 'loop', a: 2, b: 2 },
  },
  {
    name: 'a loop that is not played',
    a: three('', 'loop_mode=loop_continuous loop_start=10000 loop_end=20000', ''),
    b: three('', 'loop_mode=no_loop loop_start=10000 loop_end=20000', ''),
    truth: { kind: 'loop', a: 3, b: 3 },
  },
  {
    name: 'a longer release for all',
    a: plain,
    b: plain.replace('ampeg_release=0.1', 'ampeg_release=0.6'),
    truth: { kind: 'envelope', a: 1, b: 1 },
  },
  {
    name: 'a slow attack',
    a: plain,
    b: three('', '', 'ampeg_attack=0.05'),
    truth: { kind: 'envelope', a: null, b: 4 },
  },
  {
    name: 'a filter that the other lacks',
    a: three('cutoff=1200', '', ''),
    b: plain,
    truth: { kind: 'filter', a: 2, b: null },
  },
  {
    name: 'a filter of another type',
    a: three('', 'cutoff=800 fil_type=lpf_2p', ''),
    b: three('', 'cutoff=800 fil_type=hpf_2p', ''),
    truth: { kind: 'filter', a: 3, b: 3 },
  },
  {
    name: 'a layer that is missing',
    a: '<region> sample=c4.wav lokey=55 hikey=65 pitch_keycenter=60\n<region> sample=wide.wav lokey=55 hikey=65 pitch_keycenter=60\n',
    b: '<region> sample=c4.wav lokey=55 hikey=65 pitch_keycenter=60\n',
    truth: { kind: 'missing', a: 2, b: null },
  },
  {
    name: 'a layer too many',
    a: plain,
    b: `${plain}<region> sample=wide.wav lokey=67 hikey=72 pitch_keycenter=67\n`,
    truth: { kind: 'missing', a: null, b: 5 },
  },
  {
    name: 'the loudest strikes are not answered',
    a: '<region> sample=c4.wav key=60 lovel=1 hivel=90\n<region> sample=c4loud.wav key=60 lovel=91 hivel=127\n',
    b: '<region> sample=c4.wav key=60 lovel=1 hivel=90\n<region> sample=c4loud.wav key=60 lovel=91 hivel=120\n',
    truth: { kind: 'condition', a: 2, b: 2 },
  },
  {
    name: 'round robins the other way round',
    a: '<group> key=60 seq_length=2\n<region> sample=c4.wav seq_position=1\n<region> sample=c4other.wav seq_position=2\n',
    b: '<group> key=60 seq_length=2\n<region> sample=c4.wav seq_position=2\n<region> sample=c4other.wav seq_position=1\n',
    truth: { kind: 'condition', a: 2, b: 2 },
  },
  {
    name: 'another keyswitch',
    a: '<global> sw_lokey=24 sw_hikey=27 sw_default=24\n<region> sample=c4.wav key=60 sw_last=24\n<region> sample=c4loud.wav key=60 sw_last=25\n',
    b: '<global> sw_lokey=24 sw_hikey=27 sw_default=24\n<region> sample=c4.wav key=60 sw_last=24\n<region> sample=c4loud.wav key=60 sw_last=26\n',
    truth: { kind: 'condition', a: 3, b: 3 },
  },
  {
    name: 'half the velocity tracking',
    a: three('amp_veltrack=100', '', ''),
    b: three('amp_veltrack=50', '', ''),
    truth: { kind: 'level', a: 2, b: 2 },
  },
  {
    name: 'an octave up',
    a: three('transpose=0', '', ''),
    b: three('transpose=12', '', ''),
    truth: { kind: 'tuning', a: 2, b: 2 },
  },
  {
    name: 'a key noise that is missing',
    a: '<region> sample=c4.wav key=60\n<region> sample=noise.wav key=60 trigger=release\n',
    b: '<region> sample=c4.wav key=60\n',
    truth: { kind: 'missing', a: 2, b: null },
  },
  {
    name: 'a loop that the file says otherwise',
    a: '<region> sample=looped.wav key=60 loop_mode=loop_continuous\n',
    b: '<region> sample=looped.wav key=60 loop_mode=loop_continuous\n',
    otherBytes: { 'looped.wav': 'loopedOne.wav' },
    truth: { kind: 'loop', a: 1, b: 1 },
  },
  {
    name: 'keys that do not change the pitch',
    a: three('', 'pitch_keytrack=100', ''),
    b: three('', 'pitch_keytrack=0', ''),
    truth: { kind: 'tuning', a: 3, b: 3 },
  },
  {
    name: 'a controller that no longer fades',
    a: '<region> sample=c4.wav key=60 xfin_locc20=0 xfin_hicc20=127\n<region> sample=e4.wav key=64\n',
    b: '<region> sample=c4.wav key=60\n<region> sample=e4.wav key=64\n',
    truth: { kind: 'level', a: 1, b: null },
  },
  {
    name: 'a late start',
    a: three('', '', 'delay=0'),
    b: three('', '', 'delay=0.005'),
    truth: { kind: 'offset', a: 4, b: 4 },
  },
  {
    name: 'a vibrato that the other lacks',
    a: three('pitchlfo_freq=5 pitchlfo_depth=40', '', ''),
    b: plain,
    truth: { kind: 'tuning', a: 2, b: null },
  },
  {
    name: 'the level as decibels and as a share',
    a: three('volume=-6.0206', '', ''),
    b: three('amplitude=50', '', ''),
    truth: undefined,
  },
  {
    name: 'a semitone and 100 cents',
    a: three('tune=100', '', ''),
    b: three('transpose=1', '', ''),
    truth: undefined,
  },
  {
    name: 'a root of the group',
    a: '<group> pitch_keycenter=60\n<region> sample=c4.wav lokey=50 hikey=70\n',
    b: '<region> sample=c4.wav lokey=50 hikey=70 pitch_keycenter=60\n',
    truth: undefined,
  },
  {
    name: 'a region cut in two',
    a: '<region> sample=c4.wav lokey=48 hikey=72 pitch_keycenter=60\n',
    b: '<region> sample=c4.wav lokey=48 hikey=59 pitch_keycenter=60\n<region> sample=c4.wav lokey=60 hikey=72 pitch_keycenter=60\n',
    truth: undefined,
  },
  {
    name: 'regions in another order',
    a: plain,
    b: plain
      .split('\n')
      .toSorted((one, other) => (one < other ? 1 : -1))
      .join('\n')
      .replace(/^(.*?)(<global>.*)$/s, '$2\n$1'),
    truth: undefined,
  },
];
