const velocity = String.raw`(?:velocity|velocities|touch|how hard [^,;.]{0,30}|anschlag\p{L}*|v[eé]locit[eéaà]|velocidad|velocidade|dynamik|aanslag\p{L}*)`;
const level = String.raw`(?:levels?|loudness|volume|gain|amplitude|pegel|lautst(?:\u00e4|ae)rke|niveau|volumen|nivel|livello|intensit\p{L}+)`;
const small = `(?:the |a |an |den |die |das |le |la |el |il |o |de |het )?`;
const moves = String.raw`(?:move|change|affect|influence|control|shape|raise|drive|alter|modulate|ver(?:\u00e4|ae)nder|beeinflu|steuer|bestimm|influ|agi|modifi|cambi|contr\p{L}{0,2}l|be(?:\u00ef|i)nvloed|bepaal)\p{L}*`;

/** How far a level follows the velocity, as people say it: `how far velocity moves the level`, `velocity to volume` (from memory). */
export const velocityOfLevel: RegExp = new RegExp(
  String.raw`(?<!\p{L})${small}${velocity} (?:(?:\p{L}+ )?${moves}|to|on|auf|sur|sobre|su|op) ${small}${level}(?!\p{L})|(?<!\p{L})${velocity} ${small}${level} ${moves}|(?<!\p{L})${level} (?:follows?|depends? on|tracks?|is moved by) ${small}${velocity}(?!\p{L})`,
  'iu',
);
