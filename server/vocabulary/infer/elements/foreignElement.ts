import { isAudioFileName } from '../../../model/fileNames';
import { nameWords } from '../words/nameWords';
import { namesKeys } from './namedTargets';
import { namespaceWords } from './namespaces';
import type { ElementType } from './survey';

/** Words for what works on the sound of all regions (common practice). */
const effectWords =
  'effect effects fx reverb reverberation echo delay chorus flanger phaser distortion compressor limiter convolution convolver impulse ir hall nachhall widerhall riverbero eco reverberacion effekt effekte effet effets effetto effetti efecto efectos galm convolutie equaliser equalizer equalisation eq egaliseur entzerrer ecualizador equalizzatore equalizador tremolo overdrive saturation saturator waveshaper bitcrusher expander maximizer exciter';
/** Words for what stands behind all regions (common practice). */
const outputWords: ReadonlySet<string> = new Set('master mastering mixer mixdown output outputs'.split(' '));
/** Words for what is looked at. */
const panelWords =
  'panel ui gui look theme skin knob slider button backdrop background picture image artwork cover icon dial fader bild bilder oberflache hintergrund sfondo fondo fond immagine imagen afbeelding achtergrond peau aspect';
const panel: ReadonlySet<string> = new Set(panelWords.split(' '));
const effects: ReadonlySet<string> = new Set(effectWords.split(' '));
/** Whether a word names an effect or part of a panel. */
export function isForeignWord(word: string): boolean {
  return panel.has(word) || effects.has(word);
}

const pictureEnding = /\.(?:png|jpe?g|gif|bmp|svg|webp|tiff?|ico)$/i;

function isEffect(type: ElementType): boolean {
  return nameWords(type.name).some((word) => effects.has(word));
}

/** Whether an element stands among effects, as one in a chain of them does, whatever it is called. */
export function isAmongEffects({ parent }: ElementType): boolean {
  return parent !== undefined && [...parent.children.values()].some(isEffect);
}

/** Whether elements repeat that name an audio file and a key each: a drum has a skin as a program has. */
function isPlayed(type: ElementType): boolean {
  const sites = [type, ...type.children.values()].flatMap(({ attributes, text, mostInParent }) =>
    mostInParent === 1 || attributes === type.attributes
      ? [...attributes.values(), ...(text ? [text] : [])]
      : [],
  );
  const files = sites.filter(
    ({ values }) => values.length > 1 && values.every(({ text }) => isAudioFileName(text)),
  );
  return type.count > 1 && files.length > 0 && namesKeys(type);
}

/** So deep below an element with a picture its files may stand. */
const mostDepth = 3;

/** Whether an element holds others that name audio files, and keys are named by it or in it: a pad may have its picture. */
function holdsPlayed(type: ElementType): boolean {
  const within = descendants(type, mostDepth);
  const namesFile = ({ attributes, text }: ElementType) =>
    [...attributes.values(), ...(text ? [text] : [])].some(
      ({ values }) => values.length > 0 && values.every((value) => isAudioFileName(value.text)),
    );
  return within.some((one) => one !== type && namesFile(one)) && within.some(namesKeys);
}

function descendants(type: ElementType, depth: number): ElementType[] {
  const inner = depth === 0 ? [] : [...type.children.values()];
  return [type, ...inner.flatMap((child) => descendants(child, depth - 1))];
}

/**
 * Whether an element stands beside what sounds: an effect, part of a panel, or anything that names a picture and is not played itself, or
 * outside the regions an audio file. What stands in it says nothing of the regions.
 */
export function isForeignElement(type: ElementType, isOutside: boolean): boolean {
  const words = nameWords(type.name);
  if (namespaceWords(type).some((word) => panel.has(word))) return true;
  if (isEffect(type) || (isOutside && words.some((word) => outputWords.has(word)))) return true;
  if (words.some((word) => panel.has(word))) return !isPlayed(type);
  const firsts = [...type.attributes].map(([name, { values }]) => ({ name, text: values[0]?.text ?? '' }));
  const files = firsts.filter(({ text }) => isAudioFileName(text));
  if (files.length === 0)
    return firsts.some(({ text }) => pictureEnding.test(text)) && !isPlayed(type) && !holdsPlayed(type);
  return isOutside || files.every(({ name }) => /impulse|^ir$/i.test(name));
}
