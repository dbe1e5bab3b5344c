/** What the page is put together from. */
export interface PageParts {
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

/** The document that the web view loads; its content security policy (W3C CSP Level 3) allows one script and one style sheet. */
export function pageHtml({ scriptUri, styleUri, cspSource, nonce, language }: PageParts): string {
  const policy = `default-src 'none'; style-src ${cspSource}; script-src 'nonce-${nonce}'; base-uri 'none'; form-action 'none'`;
  return `<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${styleUri}">
<title>Copied table</title>
</head>
<body>
<main id="table-preview"></main>
<script nonce="${nonce}" src="${scriptUri}"></script>
</body>
</html>
`;
}
