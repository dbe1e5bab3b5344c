const strings = translations();

/** Texts for people in the language of the editor; used as the editor's own `l10n.t` is used in the host. */
export const l10n = {
  /** A text in the language of the interface, with `{0}`, `{1}` … replaced by the arguments. */
  t(text: string, ...args: readonly (string | number)[]): string {
    return (strings[text] ?? text).replace(/\{(\d+)\}/g, (hole, index: string) =>
      String(args[Number(index)] ?? hole),
    );
  },
};

/** What the host wrote into the document. */
function translations(): Readonly<Record<string, string>> {
  const data: unknown = JSON.parse(document.getElementById('page-strings')?.textContent ?? '{}');
  return data as Record<string, string>;
}
