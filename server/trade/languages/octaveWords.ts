/** Beginnings of the word for octave in the languages of the trade. */
const octave = String.raw`(?:o[ck]t[aá]v|ott?av|oktaaveissa|oktaav|οκτάβ|οκτάβες|октав|オクターブ|옥타브|八度)\p{L}*`;
/** What says where octaves begin to be counted. */
const begins = [
  'from|start(?:s|ing)?|begin(?:s|ning)?|first|lowest|bottom',
  'ab|von|beginn\\p{L}*|erste\\p{L}*|tiefste\\p{L}*|unterste\\p{L}*',
  '(?:à partir )?de|d[eé]s|commenc\\p{L}*|premi[eè]re?|plus (?:basse|grave)',
  'desde|empiezan?|empezando|comienzan?|primera|m[aá]s (?:baja|grave)|come[cç]am?|primeira|mais (?:baixa|grave)',
  'da|dal|partono|iniziano|cominciano|prima|pi[uù] bassa',
  'vanaf|beginnen|eerste|laagste|fr[aå]n|fra|b[oö]rjar|begynder|starter|f[oö]rsta|f[oø]rste|l[aä]gsta|laveste',
  'alkae?n?|alkavat|alin|ensimm[aä]inen|od|pierwsza|najni[zż]sza|prvn[ií]|nejni[zž][sš][ií]',
  'с|от|начина\\p{L}*|первая|самая нижняя|нижняя|από|πρώτη|χαμηλότερη',
].join('|');
const sure = '(?:から|始|最低|最も低い|从|從|起|부터|시작|최저)';
const number = String.raw`(?<![\p{Script=Latin}\p{Script=Cyrillic}\p{Script=Greek}\d])([-\u2212\u2013](?:1|2)|0)(?![\d.,]*\d)`;
const short = String.raw`[^\d.;\n\u2212-]{0,40}?`;
const word = String.raw`(?<!\p{L})(?:${begins})(?!\p{L})|${sure}`;

/** Sentences that say which number the lowest octave has: `octaves are numbered from -2`, `the first octave is -1`. */
export const firstOctave: readonly RegExp[] = [
  new RegExp(`${octave}${short}(?:${word})${short}${number}`, 'iu'),
  new RegExp(`(?:${word})${short}${octave}${short}${number}`, 'iu'),
  new RegExp(
    String.raw`${octave}${short}(?<![\p{Script=Latin}\p{Script=Cyrillic}\p{Script=Greek}\d])([-\u2212]?[012])\s*(?:から|起|开始|開始|부터)`,
    'iu',
  ),
];

/** Sentences that name the lowest C or the lowest key. */
export const lowestNote: RegExp = new RegExp(
  String.raw`(?<!\p{L})(?:lowest|bottom|first|tiefste\p{L}*|unterste\p{L}*|m[aá]s (?:bajo|grave)|mais (?:baixo|grave)|plus (?:bas|grave)|pi[uù] (?:basso|grave)|laagste|l[aä]gsta|laveste|alin|najni[zż]sz\p{L}*|nejni[zž][sš]\p{L}*|сам\p{L}{2} низк\p{L}*|низш\p{L}*|χαμηλότερ\p{L}*)\s(?:(?:midi|possible|mögliche|m[ií]dí)\s)?(?:c|key|note|do|ut|taste|note|ton|nota|tecla|touche|tasto|toets|noot|tangent|nuotti|klawisz|nuta|kl[aá]vesa|нота|до|клавиша)?${short}(?<![\p{L}\d])(?:c|do|ut|до)\s?([-\u2212](?:1|2)|0)(?!\d)`,
  'iu',
);

/** Before a name that does not count. */
export const insteadOf = String.raw`(?<!\p{L})(?:instead of|rather than|(?:an)?statt|au lieu d[eu]|en (?:lugar|vez) de|em vez de|invece (?:di|che)|in plaats van|i st[aä]llet f[oö]r|zamiast|вместо)(?!\p{L})`;
/** Behind a name that does not count. */
export const notBehind = '(?:ではなく|じゃなく|でなく|(?:이|가) 아니)';
