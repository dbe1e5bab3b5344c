import { noteName } from './notePatterns';

const mode =
  'm|min|mi|mj|maj|minor|major|moll|dur|mineur|majeur|minore|maggiore|menor|mayor|maior|minör|majör|molli|duuri|mollo|' +
  '\u043c\u0438\u043d\u043e\u0440|\u043c\u0430\u0436\u043e\u0440|dor|dorian|phrygian|lydian|mixolydian|mix|aeolian|locrian';
/** `G`, `Em`, `F# minor`, `fis-Moll`, `r\u00e9 mineur`. */
const western = new RegExp(`^${noteName}(?:[ \u00a0-]{0,2}(${mode})\\.?)?$`, 'iu');
/** `\u30cf\u9577\u8abf`, `\u5b30\u30d8\u77ed\u8abf`, `D\u5927\u8c03`, `\u964dB\u5c0f\u8c03`, `\ub2e4\uc7a5\uc870`. */
const eastern =
  /^[\u5b30\u5909\u964d\u5347]?(?:[\u30cf\u30cb\u30db\u30d8\u30c8\u30a4\u30ed]|[A-H])[#b\u266f\u266d]?(?:\u9577\u8abf|\u77ed\u8abf|\u5927\u8c03|\u5c0f\u8c03)$|^(?:\uc62c\ub9bc|\ub0b4\ub9bc)?[\ub2e4\ub77c\ub9c8\ubc14\uc0ac\uac00\ub098](?:\uc7a5\uc870|\ub2e8\uc870)$/iu;
const longest = 24;

/**
 * Whether a text names the key that a piece of music is in, and no key of a keyboard: `mode` where it says major or minor as `Em` and
 * `G-Dur` do, `tonic` where it is a note without an octave, which leaves that open. `undefined` for anything else.
 */
export function musicalKeyIn(text: string): 'mode' | 'tonic' | undefined {
  if (text.length === 0 || text.length > longest) return undefined;
  if (eastern.test(text)) return 'mode';
  const found = western.exec(text);
  return found ? (found[1] === undefined ? 'tonic' : 'mode') : undefined;
}
