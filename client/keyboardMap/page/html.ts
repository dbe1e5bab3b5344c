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

/** The page's content security policy (W3C CSP Level 3): one script, one style sheet and nothing else. */
export function contentSecurityPolicy({ cspSource, nonce }: Pick<PageParts, 'cspSource' | 'nonce'>): string {
  return `default-src 'none'; style-src ${cspSource}; script-src 'nonce-${nonce}'; base-uri 'none'; form-action 'none'`;
}

/** The document that the web view loads. All parts are written by the panel; none comes from an instrument's text. */
export function pageHtml(parts: PageParts): string {
  return `<!DOCTYPE html>
<html lang="${parts.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${contentSecurityPolicy(parts)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${parts.styleUri}">
<title>Keyboard map</title>
</head>
<body>
<main id="keyboard-map"></main>
<script nonce="${parts.nonce}" src="${parts.scriptUri}"></script>
</body>
</html>
`;
}
