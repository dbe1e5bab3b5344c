const marks: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Characters that XML 1.0 has no way to write (production 2, Char), unpaired surrogates among them. */
const impossible =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Text made safe to stand in an element or a quoted attribute of XML and HTML. */
export function escapeMarkup(text: string): string {
  return text.replace(impossible, '\ufffd').replace(/[&<>"']/g, (mark) => marks[mark]);
}
