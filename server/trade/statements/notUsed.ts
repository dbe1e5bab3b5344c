import { usualSigns } from '../languages/spelling';

/** What remarks say of takes that are kept in a list and do not play. */
const unused =
  /^(?:(?:is |are |currently |no longer |do )?(?:not (?:in use|used)|unused|not use)|do not use|don['’]t use|no longer used|(?:wird |derzeit )?nicht (?:benutzt|verwendet|in gebrauch)|unbenutzt|non utilis[eé]e?|pas utilis[eé]e?|inutilis[eé]e?|no (?:se )?(?:usa|utiliza|usad[oa]|utilizad[oa])|sin usar|non (?:usat[oa]|utilizzat[oa]|in uso)|n[aã]o (?:usad[oa]|utilizad[oa]|se usa)|niet (?:gebruikt|in gebruik)|ongebruikt|(?:används|anvands) (?:inte|ej)|ej i bruk|oanv[aä]nd|(?:bruges|brukes) (?:ikke|ej)|ikke i (?:brug|bruk)|ei (?:ole )?k[aä]yt[oö]ss[aä]|ei k[aä]ytet[aä]|nie(?: jest)? u[zż]ywan[aey]|nieu[zż]ywan[aey]|nepou[zž][ií]v[aá] se|nepou[zž]it[oaéáý]?|не используется|не использовать|не в ходу|не (?:исползва се|се използва)|не використовується|δεν χρησιμοποιείται|nem haszn[aá]lt|nincs haszn[aá]latban|kullan[ıi]lm[ıi]yor|kullan[ıi]lmaz)$|^(?:不使用|未使用|不用|使わない|使用しない|사용 ?안 ?함|미사용)$/iu;

/** Whether a remark says that its row is not used: in a clause of its own, with nothing that bounds it. */
export function saysNotUsed(remark: string): boolean {
  return usualSigns(remark)
    .split(/[,;:.()!、，。–—]|\s-\s/u)
    .some((clause) => unused.test(clause.trim()));
}
