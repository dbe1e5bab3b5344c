import type { ObjectShape, ValueShape } from './shape';

/** The published JSON Schema (draft-07) of a file of ours. */
export function schemaOfFile(title: string, shape: ObjectShape): object {
  return { $schema: 'http://json-schema.org/draft-07/schema#', title, ...schemaOf(shape) };
}

function schemaOf(shape: ValueShape): Record<string, unknown> {
  const { description } = shape;
  switch (shape.kind) {
    case 'text':
      return { type: 'string', minLength: 1, description };
    case 'choice':
      return { enum: shape.choices, description };
    case 'flag':
      return { type: 'boolean', description };
    case 'share':
      return { type: 'number', minimum: 0, maximum: 1, description };
    case 'list':
      return listSchema(shape.of, description);
    case 'textOr':
      return { anyOf: [{ type: 'string', minLength: 1 }, schemaOf(shape.object)], description };
    case 'object':
      return {
        type: 'object',
        description,
        ...(shape.required && { required: shape.required }),
        additionalProperties: false,
        properties: Object.fromEntries(
          Object.entries(shape.fields).map(([name, field]) => [name, schemaOf(field)]),
        ),
      };
  }
}

function listSchema(of: ValueShape, description: string): Record<string, unknown> {
  if (of.kind !== 'text') return { type: 'array', items: schemaOf(of), description };
  const text = { type: 'string', minLength: 1 };
  return { anyOf: [{ type: 'array', items: text }, text], description };
}
