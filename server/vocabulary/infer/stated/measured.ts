/** What was found of recordings, and what is done to them (common practice). */
const found =
  /\bmeasured|\boff pitch|\bout of tune|(?:too|how) (?:high|low|sharp|flat)|\b(?:is|are|was|were|runs?|sits?) (?:\S+ ){0,3}(?:sharp|flat|off)\b|not (?:yet )?(?:corrected|compensated)|gemessen|zu (?:hoch|tief)|noch nicht ausgeglichen|mesur|trop (?:haut|bas|aigu|grave)|pas (?:encore )?corrig|medid|demasiado (?:alt|baj|agud|grave)|sin corregir|misurat|troppo (?:alt|bass|acut|grave)|non (?:ancora )?corrett|gemeten|te (?:hoog|laag)|niet gecorrigeerd|zmierzon|za (?:wysok|nisk)|naměřen|příliš (?:vysok|nízk)|muito (?:alt|baix)|målt|mitattu|измерен|слишком (?:высок|низк)|uppmätt|för (?:hög|låg)/iu;
const done =
  /\badd(?:ed|s)?\b|\bcorrection|\bto (?:correct|compensate)|dazu|addier|korrektur|ausgleich(?!en)|ajout|correction|sum[ae]|añad|corrección|aggiun|correzione|opgeteld|correctie|dodawan|korekt/iu;

/** Whether an explanation of a tuning says how far the recordings are off, and not by how much they are to be tuned. */
export function isMeasured(text: string): boolean {
  return found.test(text) && !done.test(text);
}
