import type { Assigned } from './assign';
import type { Survey } from './elements/survey';
import { rowKeyNumber } from './ranges/rowKeys';
import { nameWords } from './words/nameWords';

/** Words of shops, telephones and broadcasting, which name sounds and keys too, by what they speak of (common practice). */
const otherTrades: Readonly<Record<string, string>> = {
  'a shop':
    'price prices currency sku stock article eur usd gbp vat discount shipping customer basket preis preise wahrung artikel lager versand kunde bestellnummer prix devise tva panier client precio precios moneda iva cliente prezzo prezzi valuta sconto prijs valuta korting klant preco cena waluta pris',
  'a telephone':
    'phone telephone dial extension caller ivr dtmf voicemail mailbox hotline prompt announcement operator telefon anruf anrufer durchwahl ansage warteschleife telephone appel appelant annonce poste telefono llamada llamante anuncio centralita chiamata annuncio interno telefoon beller doorkiesnummer aankondiging telefone ligacao',
  'broadcasting or a list of recordings':
    'broadcast broadcaster presenter jingle episode podcast playlist album artist artists airtime news weather sponsor sendung moderation moderator nachrichten wetter sendezeit folge emission animateur antenne meteo actualites locutor emision noticias trasmissione conduttore notizie uitzending presentator nieuws',
};

/** What a text speaks of instead of an instrument: each with its words that stand in names. */
function otherTradeIn({ types }: Survey): { trade: string; words: Set<string> } | undefined {
  let best: { trade: string; words: Set<string> } | undefined;
  for (const [trade, listed] of Object.entries(otherTrades)) {
    const known = new Set(listed.split(' '));
    const words = new Set<string>();
    for (const { name, attributes } of types)
      for (const one of [name, ...attributes.keys()])
        for (const word of nameWords(one)) if (known.has(word)) words.add(word);
    if (words.size > (best?.words.size ?? 0)) best = { trade, words };
  }
  return best;
}

/** A time such as `00:31` of a place that has such times throughout, as no place of an instrument does. */
function clockTimeIn({ types }: Survey): string | undefined {
  for (const { attributes } of types)
    for (const { values } of attributes.values())
      if (values.length > 1 && values.every(({ text }) => /^\s*\d{1,3}:[0-5]\d(?::[0-5]\d)?\s*$/.test(text)))
        return values[0]?.text;
  return undefined;
}

/** Key 12 is C0 (16 Hz, ISO 16 taken on), below what is recorded. */
const leastKey = 12;

/**
 * Why places that could be those of regions make no musical sense, as a clause about the text; `undefined` where they do: keys that
 * are all below what can be heard, or names of another trade where neither root keys nor velocities say more.
 */
export function lackOfSense(assigned: readonly Assigned[], survey: Survey): string | undefined {
  const has = (...targets: string[]) => assigned.some(({ target }) => targets.includes(target));
  const keys = assigned.filter(({ target }) => ['lokey', 'hikey', 'key', 'pitch_keycenter'].includes(target));
  const numbers = keys.flatMap(({ texts, base = 0 }) =>
    texts.flatMap((text) => {
      const key = rowKeyNumber(text);
      return key === undefined ? [] : [key + base];
    }),
  );
  const isLow = numbers.length > 0 && numbers.every((key) => key < leastKey);
  const isNamed = keys.some(({ facts }) => facts.notes > 0);
  if (isLow && !isNamed && !has('tune', 'transpose', 'loop_start'))
    return `its keys, ${Math.min(...numbers)} to ${Math.max(...numbers)}, lie below those of instruments`;
  const other = otherTradeIn(survey);
  if (!has('lokey', 'hikey', 'pitch_keycenter', 'lovel', 'hivel')) {
    const time = clockTimeIn(survey);
    if (time !== undefined) return `it is told in times of the day or of a tape, such as "${time}"`;
  }
  const roots = keys.filter(({ target }) => target === 'pitch_keycenter').flatMap(({ texts }) => texts);
  // Digits beside other numbers are those of a telephone.
  const areDigits = roots.length > 0 && !roots.some((text) => (rowKeyNumber(text) ?? -1) >= leastKey);
  const isPlayed =
    !areDigits && has('pitch_keycenter', 'lovel', 'loop_start', 'tune', 'seq_position') && numbers.length > 0;
  if (!other || (isPlayed && other.words.size < 3)) return undefined;
  const isTold = other.words.size > 1 || (numbers.length > 0 && !isPlayed && has('lokey'));
  return isTold && !(isPlayed && has('lovel') && has('lokey'))
    ? `it speaks of ${other.trade} (${[...other.words].slice(0, 3).join(', ')})`
    : undefined;
}
