import type { LevelScale } from '../trade/scales/levelScale';

/**
 * How an XML dialect writes an instrument: which of its elements are what, where each parameter stands and in which
 * form. Parameters carry the names of the open SFZ format. It is kept as JSON in a file named `*.vocabulary.json`.
 */
export interface Vocabulary {
  /** What people call it. */
  name: string;
  /**
   * The elements that carry parameters, from the outermost inwards; the last one is the region. Where the first is no instrument
   * and has nothing in `inside`, any outermost element may stand around them, and one named after the vocabulary is written.
   */
  levels: VocabularyLevel[];
  /**
   * The namespaces of its names (Namespaces in XML 1.0, W3C Recommendation, third edition) by prefix, that of names without
   * one under the empty prefix. They are declared on the outermost element; reading goes by the names as they are written.
   */
  namespaces?: Record<string, string>;
  /**
   * Ends of ranges that no place gives and that follow from the ranges beside them: a low end lies right above the high end of the
   * step before, a high end right below the low end of the next one, among elements of one kind in the same element. They are
   * read and not written.
   */
  steps?: StepEnd[];
  /** How regions loop whose loop points stand in the text while no place says so. It is read and not written. */
  loops?: 'loop_continuous' | 'loop_sustain';
  /** Whether ranges whose low end lies above the high one are read as written backwards; elsewhere they sound never. */
  backwards?: true;
  /**
   * Whether regions that give no keys play one key each in their order, from the low key of an element around them on. A region without
   * a sample takes up a key and is passed over. It is read and not written.
   */
  keysInOrder?: true;
  /**
   * Whether regions that give root keys alone share the keys out among them, up to the middles between roots. It is read and not
   * written.
   */
  keysByRoots?: true;
  /** Elements that are passed over where something in them says so. */
  off?: SwitchedOff[];
  /** Elements whose regions of the same keys and velocities sound one at a time. It is read and not written. */
  takes?: TakesElement[];
  /** Where regions give their chances among those of the same keys and velocities. It is read and not written. */
  chances?: Chances;
  /** Decisions that were taken on little evidence and that nobody has confirmed, by their `id`. */
  unsettled?: string[];
}

/** An end of a range of keys or velocities. */
export type StepEnd = 'lokey' | 'hikey' | 'lovel' | 'hivel';

/**
 * An element that a place in it switches off: a region, or a group with all in it, is then left out; of any other element nothing
 * but that place is read.
 */
export interface SwitchedOff {
  /** The element's name as written, prefix included. */
  element: string;
  /** Where it is switched, as in {@link VocabularyParameter.at}. */
  at: string;
  /** What stands there where it is off; the case of letters does not matter. An empty text: nothing stands there. */
  words: string[];
}

/** How likely regions are among those of the same keys and velocities. */
export interface Chances {
  /** The region's element. */
  element: string;
  /** Where its chance stands, as in {@link VocabularyParameter.at}. */
  at: string;
  /** What all chances make up: 1, or 100 for percent. */
  whole: 1 | 100;
}

/** An element of whose regions, where they have the same keys and velocities, one sounds at a time. */
export interface TakesElement {
  /** The element's name as written, prefix included. */
  element: string;
  /** Where it says so, as in {@link VocabularyParameter.at}; without it each such element does. */
  at?: string;
  /** What stands there; the case of letters does not matter. */
  words?: string[];
  /** Whether they are chosen at random, each as often as the others, take turns in their order or are layers of velocities. */
  are: 'random' | 'turns' | 'layers';
  /** For layers: the greatest velocity of each region, in their order. Where there are more or fewer regions they are none. */
  upTo?: number[];
}

/** An element that holds regions, or a region itself. */
export interface VocabularyLevel {
  /** The element's name as written, prefix included. */
  element: string;
  /** The outermost element is the instrument; what stands between it and the region is a group. */
  is: 'instrument' | 'group' | 'region';
  /** Names of elements between the level before and this one that carry nothing, from the outermost inwards. */
  inside?: string[];
  /** Other names of elements that are such a region, with what each sets by being there: `{ "releaseZone": { "trigger": "release" } }`. */
  also?: Record<string, Record<string, string>>;
  /** Where the element states the sample rate, in frames a second, of the samples in it; as in {@link VocabularyParameter.at}. */
  rate?: string;
  /** For a group: whether the regions in it are the turns of a round robin, in their order. */
  turns?: boolean;
  /** Parameters that the element sets by being there, with their values: a group whose name says what starts its regions. */
  sets?: Record<string, string>;
  /** In the order in which they are written. Those of an instrument or group are inherited by the regions in it. */
  parameters: VocabularyParameter[];
}

/** One parameter of an element: where it stands and how it is written. */
export interface VocabularyParameter {
  /** The parameter's name in the open SFZ format. */
  parameter: string;
  /**
   * Where it stands, seen from the element, as a path of the kind that XPath 1.0 (W3C Recommendation, 1999) knows:
   * `@low` an attribute, `keys/@low` an attribute of a child element, `keys` the text of a child element, `.` the
   * element's own text, `setting[@name="low"]/@value` an attribute of that child element whose attribute `name` says `low`.
   */
  at: string;
  /** Where the place holds a range such as `36-48`: whether this is its first or its second part. */
  part?: 1 | 2;
  /** What parts a range when it is written; `-` where nothing is said. */
  between?: string;
  /**
   * Where the place holds no value but the key of an entry in a list: that list, and where the value stands in the entry. What the
   * element itself says of the parameter goes before it. Such values are read and not written.
   */
  listed?: ListPlace;
  form: ValueForm;
}

/** What stands behind a number, blanks included, such as ` dB`. */
export interface WithUnitText {
  unitText?: string;
}

/** A place in the entries of a list elsewhere in the text. */
export interface ListPlace {
  /** The name of the elements that are its entries. */
  element: string;
  /** What is referred to, as in {@link SampleListPlace.key}. */
  key: string;
  /** Where the value stands in an entry, as in {@link SampleListPlace.path}. */
  at: string;
}

/** A list of samples elsewhere in the text. */
export interface SampleListPlace {
  /** The name of the elements that are its entries. */
  element: string;
  /**
   * What regions refer to: an attribute of an entry such as `@id`, the text of an element in it such as `id`, or its position among
   * all of them, counted from 0 or 1: `#0`, `#1`.
   */
  key: string;
  /**
   * Where an entry has its path: an attribute such as `@file`, `.` for its text, `file` or `file/@name` for those of an element in it.
   */
  path: string;
  /**
   * The attribute of an element around an entry that names the folder of its path, such as `@folder`, or `dir/@name` where elements
   * named `dir` alone do so; of several the nearest counts.
   */
  under?: string;
  /** The elements around an entry, from inside the outermost one inwards, with `/` between them. */
  inside?: string;
  /** The attribute of an entry that states its sample rate, such as `@rate`. */
  rate?: string;
  /** Where the keys are whole numbers: the first of them, from which those of a list that is written go on. */
  first?: string;
}

/** How a value is written. */
export type ValueForm =
  /**
   * A key by its number, with `offset` added to it, or by its note name with the name of key 60. Both are read, and numbers
   * such as `0x3C` too; `written` says how it is written. As a frequency in Hz it is that of the nearest key. `naming`: German names, where H is the note above B, or
   * the syllables `do` to `si`; with lines the case of the letter and its number give the octave, so that `c1` is key 60
   * and `C` key 36. `names` are those that are written for the twelve keys from C, with blanks between: `Do Reb Re Mib …`.
   */
  | {
      kind: 'key';
      written: 'number' | 'name' | 'hexadecimal' | 'frequency';
      middleC?: 'C3' | 'C4' | 'C5';
      naming?: 'german' | 'syllables' | 'lines' | 'german lines';
      names?: string;
      offset?: number;
    }
  /**
   * A velocity from 0 to `most`, which stands for 127. `touching`: a high end is where the next layer begins, so it is not played.
   * `fromOne`: whole numbers are counted from 1, so a low end begins right above the number before it.
   * `step`: the next layer begins so much above a high end, and what lies between belongs to the lower one.
   */
  | ({ kind: 'velocity'; most: number; touching?: boolean; fromOne?: boolean; step?: number } & WithUnitText)
  /**
   * A level in dB, in centibels (tenths of a dB), or as a share of the amplitude: as a factor, a percentage, or a number of seven
   * or eight bits, of which 127 or 255 is the full amplitude. `attenuation`: greater numbers are quieter; a share then says
   * what is missing to the full one. `most` is the greatest number that can be written; of seven or eight bits it is their greatest.
   */
  | ({ kind: 'level'; unit: LevelScale; attenuation?: boolean; most?: number } & WithUnitText)
  /**
   * A position between the numbers for left, centre and right. `sides`: letters or words stand for the sign, as in `50R`, and
   * one for the centre alone; `sidesStand` says where they are written.
   */
  | ({
      kind: 'pan';
      left: number;
      centre: number;
      right: number;
      sides?: { left: string; centre: string; right: string };
      sidesStand?: 'before' | 'behind';
    } & WithUnitText)
  /**
   * A tuning. `measured`: how far the sample is off pitch, which the tuning takes back. As the frequency of a sample it is what that
   * lacks to the nearest key; it is read and not written.
   */
  | ({
      kind: 'tuning';
      unit: 'cents' | 'semitones' | 'ratio' | 'frequency';
      measured?: boolean;
    } & WithUnitText)
  /**
   * How many keys or velocities there are from another parameter of the region on, that one included; from the root key, how many keys
   * lie between it and the end, the end included. `signed`: those below the root key are written with a minus sign.
   */
  | ({ kind: 'count'; from: 'lokey' | 'lovel' | 'pitch_keycenter'; signed?: boolean } & WithUnitText)
  /**
   * A place in the sample. `first` is the number of the first frame, 0 where nothing is said; only frames are counted from 1.
   * `last`: an end names the last frame that is played, as where nothing is said, or the one behind it. `from`: it is a length
   * counted from another parameter of the region, and its end the frame behind it where nothing is said. `thousands`: what
   * stands between groups of three digits. `none` is the number that sets nothing. `rate`: frames a second of samples whose own rate is not known. `atRate`:
   * frames are counted at the rate that stands beside the sample, even where its file has another one.
   */
  | ({
      kind: 'position';
      unit: 'frames' | 'seconds' | 'milliseconds' | 'fraction' | 'percent';
      first?: 0 | 1;
      last?: 'included' | 'excluded';
      from?: 'offset' | 'loop_start';
      thousands?: ',' | '.' | ' ' | "'";
      none?: number;
      rate?: number;
      atRate?: boolean;
    } & WithUnitText)
  /** A stretch of time. */
  | ({ kind: 'time'; unit: 'seconds' | 'milliseconds' } & WithUnitText)
  /**
   * A number as the open SFZ format has it, less `plus`, multiplied by `times`. `none` is the number that sets nothing.
   */
  | ({ kind: 'number'; times?: number; plus?: number; none?: number } & WithUnitText)
  /** Words, each with the value of the open SFZ format that it stands for; the first word of a value is the one that is written.
   * A word that stands for an empty text sets nothing. `over`: what it sets goes before what other places of the element set. */
  | { kind: 'words'; words: Record<string, string>; over?: boolean }
  /**
   * A path to an audio file. `folder`: what is to be put before it, relative to the folder of the text; `under`: the place, seen
   * from an element around it or from the region before it, that names a further folder, the nearest one where several do, inside those of elements of its name; several places with `|`
   * between them are joined in that order, each one where it stands around; `//stencil[@id=current()/@like]/@folder` is one in the entry
   * of a list that `@like` refers to; `ending`: what is to be put behind.
   * `list`: the text is no path but the key of an entry in a list of samples.
   */
  | {
      kind: 'path';
      folder?: string;
      under?: string;
      ending?: string;
      separator?: '/' | '\\';
      list?: SampleListPlace;
    }
  | { kind: 'text' };

/** The ending of the names of files that hold a vocabulary. */
export const vocabularyEnding = '.vocabulary.json';
