/** What a page in a web view is put together from. */
export interface PageParts {
  /** The name of the page, and the `id` of the element that its script fills. */
  title: string;
  id: string;
  /** Addresses of the bundled script and the style sheet, as the web view reaches them. */
  scriptUri: string;
  styleUri: string;
  /** Where the web view may load styles from. */
  cspSource: string;
  /** A word made anew for each page; only the script that carries it, and what it imports, runs. */
  nonce: string;
  /** The language of the interface, such as `en`. */
  language: string;
  /** Translations of what the page says; a text that is not among them stays as it is. */
  strings?: Readonly<Record<string, string>>;
  /** Whether the page plays sound, which needs workers from addresses that it makes itself and files that it fetches. */
  playsSound?: boolean | undefined;
  /** Whether the page makes pictures of drawings of its own, for which it loads these from addresses that hold them. */
  makesPictures?: boolean | undefined;
}

/** The document that a web view loads. All parts are written by a host; none comes from an instrument's or a table's text. */
export function pageDocument(parts: PageParts): string {
  const { title, id, scriptUri, styleUri, nonce, language, strings = {} } = parts;
  // Within a script element only `<` could end it (HTML, section 4.12.1.3).
  const data = JSON.stringify(strings).replaceAll('<', '\\u003c');
  return `<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyOf(parts)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${styleUri}">
<title>${title}</title>
</head>
<body>
<main id="${id}"></main>
<script type="application/json" id="page-strings">${data}</script>
<script type="module" nonce="${nonce}" src="${scriptUri}"></script>
</body>
</html>
`;
}

/**
 * The content security policy of a page (W3C CSP Level 3): one script with what it imports, one style sheet and nothing
 * else. Sound comes on top for the page that plays it: a worklet and workers from Blob addresses (the extension's own
 * files are refused there), compiled code for the loops of the voice, which compiles no text ('wasm-unsafe-eval'), and `fetch` of
 * the files that the web view may reach; images that addresses hold, for one that
 * makes pictures.
 */
function policyOf({ cspSource, nonce, playsSound = false, makesPictures = false }: PageParts): string {
  const rules = [
    `default-src 'none'`,
    `style-src ${cspSource}`,
    `script-src 'nonce-${nonce}'${playsSound ? " blob: 'wasm-unsafe-eval'" : ''}`,
    ...(playsSound ? [`connect-src ${cspSource}`, 'worker-src blob:'] : []),
    ...(makesPictures ? ['img-src data:'] : []),
    `base-uri 'none'`,
    `form-action 'none'`,
    // Text never becomes elements but through templates (Trusted Types, W3C); a worker's address would need the same leave.
    ...(playsSound ? [] : [`require-trusted-types-for 'script'`, 'trusted-types lit-html']),
  ];
  return rules.join('; ');
}
