import { nameWords } from '../words/nameWords';
import type { SampleFiles } from './sampleFiles';

/** Words for the shapes of generated waves and for noise (common practice of sound synthesis; other languages from memory). */
const shapes: ReadonlySet<string> = new Set(
  'saw saws sawtooth ramp square squares sqr rect rectangle rectangular sine sin sinus cosine triangle triangular tri pulse pulses pwm noise noises impulse sagezahn saegezahn rechteck dreieck puls rauschen carre carree scie dent sinusoide triangulaire bruit impulsion cuadrada sierra senoidal seno triangular triangulo pulso ruido quadra dente sega sinusoidale triangolare impulso rumore zaagtand blokgolf sinusgolf driehoek ruis'.split(
    ' ',
  ),
);
/** What stands beside them. */
const beside: ReadonlySet<string> = new Set(
  'wave waves waveform white pink brown red blue super soft hard up down rising falling narrow wide thin de en d di a the osc oscillator off none'.split(
    ' ',
  ),
);

/** A name of a sample where all are shapes of waves that synthesizers generate, with neither ending nor file; else `undefined`. */
export function generatedShape({ form, facts, names }: SampleFiles): string | undefined {
  if (form.ending === undefined || facts.some((one) => one !== undefined)) return undefined;
  const named = names.filter((name) => name !== undefined);
  return named.length > 0 && named.every(isShape) ? named[0] : undefined;
}

function isShape(name: string): boolean {
  const words = nameWords(name).filter((word) => !/^\d+$/.test(word));
  return (
    words.some((word) => shapes.has(word)) && words.every((word) => shapes.has(word) || beside.has(word))
  );
}
