/** Words and signs for what is not exact, before a key and behind it, in languages of the trade. */
export const roughlyBefore: RegExp =
  /^(?:[~\u2248\u223c]|(?:about|around|approx(?:imately)?|circa|ca|roughly|maybe|probably|etwa|ungef\u00e4hr|rund|vielleicht|wohl|environ|vers|peut-\u00eatre|forse|aprox(?:imadamente)?|quiz\u00e1s?|talvez|ongeveer|ungef\u00e4r|omkring|noin|oko\u0142o|asi|около|примерно|約|约)(?![\p{L}])\.?)\s*/iu;
export const roughlyBehind: RegExp = /\s*(?:\(?\?+\)?|-?ish|\(?(?:approx|ca|circa|about)\.?\)?)$/iu;
