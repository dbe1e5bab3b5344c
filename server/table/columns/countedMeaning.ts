import { unitInHeading } from '../../trade/headings/headings';
import { unitOf } from '../../trade/languages/cellWords';
import { givesMeasuredUnit, namesMeasure } from '../../trade/languages/measuredWords';
import { bareWord } from '../../trade/languages/spelling';
import type { ColumnMeaning, Unit } from '../../trade/meaning';
import { saysOf } from '../../trade/phrases/toldWords';
import { unitFractionIn } from '../../trade/phrases/unitFractions';
import type { ColumnContents } from './columnContents';
import { shareOf } from './columnContents';

const unitMeanings = { dB: 'volume', cents: 'tune', semitones: 'transpose', linear: 'volume' } as const;
/** Stems of words for making softer, without accents. */
const softer =
  /(?<!\p{L})(?:att(?:en)?\b|attenu|atenu|dampf|damp|demp|dæmp|vaimenn|tlum|utlum|cut|loss|reduc|reduz|reduk|reduit|lower|down|softer|quieter|below|beneath|under|pad(?!\p{L})|plus bas|en dessous|unter|debajo|sotto|onder|leiser|absenk|abschwach|minder|lager|zachter|verzwak|affaibl|baiss|moins|baj|menos|rebaj|abbass|meno|ridott|baix|sank|sænk|ciszej|obniz|scisz|zeslab|ztis|ослаб|пониж|тише|halkit|csillap|kisma|azalt)/u;

/** What numbers are by the unit in a heading of which nothing else is known: dB are levels, cents a tuning. */
export function countedMeaning(
  heading: string,
  contents: ColumnContents,
): { meaning: ColumnMeaning; unit: Unit } | undefined {
  const unit = unitInHeading(heading) ?? unitBefore(heading) ?? unitWithin(heading);
  if (unit !== 'dB' && unit !== 'cents' && unit !== 'semitones' && unit !== 'linear') return undefined;
  if (unit === 'linear' && !areFactors(contents)) return undefined;
  // A letter alone is more often a name.
  const isLetter = /(?:^|[^\p{L}])\p{L}[^\p{L}]*$/u.test(heading);
  const isMeasured =
    (unit === 'dB' || unit === 'linear') && (namesMeasure(heading) || givesMeasuredUnit(heading));
  if (isLetter || isMeasured || shareOf(contents, 'number') < 0.5) return undefined;
  const part = unitFractionIn(heading, (one) => one === unit);
  const own = part === undefined || part === 'unknown' ? unit : part;
  return { meaning: turned(heading, unit) ?? unitMeanings[unit], unit: own };
}

/** The unit that a heading begins with, before a word that says which way it counts: `dB softer`, `cents flat`. */
function unitBefore(heading: string): Unit | undefined {
  const [, first = '', rest = ''] = /^(\S{1,12})\s+(\S.{0,30})$/u.exec(heading.trim()) ?? [];
  const isWay = (['quieter', 'louder', 'sharp', 'flat', 'up', 'down'] as const).some((way) =>
    saysOf(rest, way),
  );
  return isWay ? unitOf(first) : undefined;
}

/** dB amid words that say that samples are softer by them: `Level dB down`. */
function unitWithin(heading: string): Unit | undefined {
  return /(?<!\p{L})dB(?!\p{L})/iu.test(heading) && softer.test(bareWord(heading)) ? 'dB' : undefined;
}

/** What numbers are that count the other way: dB by which a sample is softer, cents by which it is too high. */
function turned(heading: string, unit: keyof typeof unitMeanings): ColumnMeaning | undefined {
  if (unit === 'dB')
    return softer.test(bareWord(heading)) && !saysOf(heading, 'louder') ? 'attenuation' : undefined;
  return saysOf(heading, 'sharp') && !saysOf(heading, 'flat') ? 'deviation' : undefined;
}

/** Whether numbers are shares of an amplitude, and no ratios of pitches, which lie closer to 1. */
function areFactors({ least, greatest, fractional }: ColumnContents): boolean {
  return least >= 0 && greatest <= 4 && fractional > 0 && (least < 0.9 || greatest > 1.12);
}
