import { HeaderKind, headerKindOf } from '../../model/headerKinds';
import { noteNameOf } from '../../model/keys';
import type { Place } from '../../model/notation';
import { listOpcodes, resolveOpcode } from '../../model/opcodes/resolve';
import { namedControllers } from '../controllers';
import { headerSentence } from '../headerText';
import { opcodeMarkdown } from '../opcodeText';
import type { ReadDocument } from '../readDocument';
import { mainSource } from '../readDocument';
import { headerOffers, headerOffersAmongNames } from './completeHeaders';
import { elementOffers, opcodeOffers } from './completeOpcodes';
import { folderOffers, includeOffers, sampleOffers } from './completePaths';
import { shapeOffers } from './completeShapes';
import type { CompletionOffer } from './completionOffer';

/** What can be written at an offset, so that the cursor then is where a person types on. */
export async function completionsAt(document: ReadDocument, offset: number): Promise<CompletionOffer[]> {
  const place = document.notation.placeAt(document.instrument, offset);
  const offers = await offersAt(document, place, offset);
  return place.kind === 'value' || place.kind === 'include' ? pastQuote(offers, document, place) : offers;
}

/** Offers of whole values with the quotation mark that closes them, so that a person types on behind it. */
function pastQuote(
  offers: CompletionOffer[],
  document: ReadDocument,
  { start, end }: { start: number; end: number },
): CompletionOffer[] {
  const { text } = mainSource(document);
  const quote = text.charAt(end);
  if (!/["']/.test(quote) || text.charAt(start - 1) !== quote) return offers;
  const isWhole = (offer: CompletionOffer) => offer.end === end && !offer.goesOn && offer.kind !== 'folder';
  return offers.map((offer) =>
    isWhole(offer)
      ? { ...offer, end: end + 1, insert: [offer.insert[0] + offer.insert[1] + quote, ''] }
      : offer,
  );
}

async function offersAt(document: ReadDocument, place: Place, offset: number): Promise<CompletionOffer[]> {
  switch (place.kind) {
    case 'header':
      return [
        ...headerOffers(document, place.start, place.end),
        ...elementOffers(document, place, offset),
        ...(place.header < 0 ? shapeOffers(document, place.start, place.end) : []),
      ];
    case 'name': {
      const offers = opcodeOffers(document, place, offset);
      if (place.parameter >= 0 || !document.notation.spelling.headerAmongNames) return offers;
      return [
        ...offers,
        ...headerOffersAmongNames(document, place.start, place.end),
        ...shapeOffers(document, place.start, place.end),
      ];
    }
    case 'value':
      return valueOffers(document, place, offset);
    case 'include':
      return includeOffers(document, { ...place, offset });
    case 'variable':
      return variableOffers(document, place);
    case 'other':
      return [];
  }
}

/** What there is to read about an offer, as Markdown, by its `documented`. */
export function documentationOf(documented: string): string | undefined {
  const header = headerKindOf(documented);
  if (header !== HeaderKind.unknown) return headerSentence(header);
  const facts =
    listOpcodes().find(({ pattern }) => pattern === documented) ?? resolveOpcode(documented)?.facts;
  return facts && opcodeMarkdown(facts);
}

async function valueOffers(
  document: ReadDocument,
  { start, end, header, name }: Extract<Place, { kind: 'value' }>,
  offset: number,
): Promise<CompletionOffer[]> {
  const facts = resolveOpcode(name)?.facts;
  if (!facts) return [];
  if (name === 'sample') return sampleOffers(document, header, { start, end, offset });
  if (facts.kind === 'path') return folderOffers(document, { start, end, offset });
  const typed = mainSource(document).text.slice(start, offset);
  const { spelling } = document.notation;
  if (facts.options.length > 0) {
    return facts.options.flatMap((option, rank): CompletionOffer[] => {
      const label = spelling.inForm ? spelling.inForm(name, option, typed) : option;
      if (label === undefined) return [];
      return [
        {
          kind: 'option',
          label,
          start,
          end,
          insert: [spelling.value(label), ''],
          ...(option === facts.defaultText ? { remark: 'default' } : label !== option && { remark: option }),
          rank,
        },
      ];
    });
  }
  if (/^(?:sustain|sostenuto)_cc$/.test(name)) {
    return namedControllers(document.instrument).map(({ controller, label }) => ({
      kind: 'option',
      label: String(controller),
      start,
      end,
      insert: [String(controller), ''],
      remark: label,
      rank: controller,
    }));
  }
  return facts.kind === 'key' && /^[a-g]/i.test(typed) ? keyOffers(document, name, typed, start, end) : [];
}

/** The 128 keys by name, in the letter case that was begun with. */
function keyOffers(
  { notation }: ReadDocument,
  parameter: string,
  typed: string,
  start: number,
  end: number,
): CompletionOffer[] {
  const lower = typed.charAt(0) === typed.charAt(0).toLowerCase();
  return Array.from({ length: 128 }, (_, key): CompletionOffer => {
    const usual = notation.spelling.inForm?.(parameter, String(key), typed) ?? noteNameOf(key);
    const name = lower ? usual.toLowerCase() : usual;
    return { kind: 'key', label: name, start, end, insert: [name, ''], detail: `key ${key}`, rank: key };
  });
}

function variableOffers(
  { instrument }: ReadDocument,
  { start, end }: { start: number; end: number },
): CompletionOffer[] {
  const values = new Map<string, string>();
  for (const { kind, name, value, source, start: at } of instrument.directives) {
    if (kind === 'define' && (source !== 0 || at < start) && name.length > 1) values.set(name, value);
  }
  return [...values].map(([label, value]) => ({
    kind: 'variable',
    label,
    start,
    end,
    insert: [label, ''],
    detail: value,
    rank: 0,
  }));
}
