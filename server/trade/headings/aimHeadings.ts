import { bareWord } from '../languages/spelling';
import { unitInHeading } from './headings';

/** Stems of words for a value as it is meant to be, in the languages of the trade and without accents. */
const aim =
  /(?<!\p{L})(?:nominal|nominell|target|(?:should|ought)(?: to)?(?: be)?(?!\p{L})|supposed|intended|ideal|theor|expect|desired|wanted|soll|ziel|vis[ea]e?(?!\p{L})|voulu|souhait|cible|attendu|prevu|objetivo|obiettivo|previst|desead|teoric|esperad|atteso|voluto|alvo|desejad|doel|gewenst|streef|mal(?:varde|vaerdi)?(?!\p{L})|bor(?:varde)?(?!\p{L})|borvarde|onsk|tavoite|docelow|zadan|wymagan|cilov|pozadovan|hedef|celtal|целев|номинал|должн|ожида|заданн|στοχ|ονομαστ)|目標|理論|规定|目标|目標値|기준|목표/u;
/** Stems of words for a value as it is found. */
const found =
  /(?<!\p{L})(?:measured|actual|found|is(?!\p{L})|sounds?(?!\p{L})|heard|real(?!\p{L})|ist(?!\p{L})|istwert|gemess|messwert|tatsachl|mesur|releve|reel|medid|actual|real|misurat|rilevat|effettiv|reale|gemeten|werkelijk|uppmatt|matt(?!\p{L})|malt(?!\p{L})|verklig|faktisk|mitattu|zmierzon|rzeczywist|namereno|namer|skutecn|olculen|gercek|измерен|фактич|реальн|μετρη|πραγματ)|実測|測定|测得|實測|实测|측정/u;

/** Whether a heading speaks of a pitch as it is meant, or as it was found: `Nominal Hz`, `Ist (Cent)`. `undefined` for others. */
export function pitchSide(heading: string): 'aim' | 'found' | undefined {
  const words = bareWord(heading).replace(/[_-]/gu, ' ');
  const [isAim, isFound] = [aim.test(words), found.test(words)];
  return isAim === isFound ? undefined : isAim ? 'aim' : 'found';
}

/** The unit of pitches that a heading gives. */
export function pitchUnit(heading: string): 'Hz' | 'cents' | undefined {
  const unit = unitInHeading(heading);
  if (unit === undefined && /(?<!\p{L})hz(?!\p{L})/iu.test(heading)) return 'Hz';
  return unit === 'Hz' || unit === 'cents' ? unit : undefined;
}
