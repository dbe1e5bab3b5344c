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
  /** A word made anew for each page; only the script that carries it runs. */
  nonce: string;
  /** The language of the interface, such as `en`. */
  language: string;
}

/**
 * The document that a web view loads. Its content security policy (W3C CSP Level 3) allows one script, one style sheet and
 * nothing else. All parts are written by a panel; none comes from an instrument's or a table's text.
 */
export function pageDocument({
  title,
  id,
  scriptUri,
  styleUri,
  cspSource,
  nonce,
  language,
}: PageParts): string {
  const policy = `default-src 'none'; style-src ${cspSource}; script-src 'nonce-${nonce}'; base-uri 'none'; form-action 'none'`;
  return `<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${styleUri}">
<title>${title}</title>
</head>
<body>
<main id="${id}"></main>
<script nonce="${nonce}" src="${scriptUri}"></script>
</body>
</html>
`;
}
