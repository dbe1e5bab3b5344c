// Units of the format: SoundFont Technical Specification 2.04, section 9.3.

/** The frequency of MIDI key 0, to which absolute cents refer; the specification rounds it to 8.176 Hz. */
const lowestHertz = 440 * 2 ** (-69 / 12);

/** What stands for no time at all: as a time it would be 0.98 ms. */
const noTime = -12000;

/** Timecents as seconds; {@link noTime} and less are 0. */
export function secondsOfTimecents(timecents: number): number {
  return timecents <= noTime ? 0 : 2 ** (timecents / 1200);
}

/** Seconds as whole timecents; no less than {@link noTime}. */
export function timecentsOfSeconds(seconds: number): number {
  return seconds > 0 ? Math.max(noTime, Math.round(1200 * Math.log2(seconds))) : noTime;
}

/** Absolute cents as Hertz. */
export function hertzOfCents(cents: number): number {
  return lowestHertz * 2 ** (cents / 1200);
}

/** Hertz as whole absolute cents; 0 Hz gives −Infinity. */
export function centsOfHertz(hertz: number): number {
  return Math.round(1200 * Math.log2(hertz / lowestHertz));
}

/** An attenuation in centibels as a factor. */
export function gainOfCentibels(centibels: number): number {
  return 10 ** (-centibels / 200);
}

/** A factor as an attenuation in centibels; 0 gives Infinity. */
export function centibelsOfGain(gain: number): number {
  return -200 * Math.log10(gain);
}

/** How many dB the volume envelope of SFZ falls in the time that is written down, by the shape that its format documents. */
const sfzFallDb = 90;
/** How many dB that of a SoundFont falls in the time that is written down. */
const soundFontFallDb = 100;

/** A decay or release time of a SoundFont as that of SFZ text with the same slope, in seconds. */
export function sfzFallSeconds(seconds: number): number {
  return (seconds * sfzFallDb) / soundFontFallDb;
}

/** A decay or release time of SFZ text as that of a SoundFont with the same slope, in seconds. */
export function soundFontFallSeconds(seconds: number): number {
  return (seconds * soundFontFallDb) / sfzFallDb;
}
