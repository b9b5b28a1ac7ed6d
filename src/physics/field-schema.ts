// How do the rows of enclosure-fields.ts read as a JSON Schema (2020-12), for editors and other programs?
// Leaves out: rules between fields and the list of materials, which only enclosureFrom knows.
import { idPattern, textPattern } from './field-reader.ts';
import { allowedInWords, type FieldNode } from './field-tree.ts';

type Json = { readonly [key: string]: unknown };

export const schemaTitle = 'An enclosure: box, heaters, thermostats, furnishing, room and animal';

/** The whole schema document. */
export function schemaFrom(tree: FieldNode): Json {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: schemaTitle,
    description:
      'Limits of single fields. Rules between fields (everything inside the box, names that must exist, known materials) are checked by the program as well; docs/formats.md lists them.',
    ...nodeSchema(tree),
  };
}

function nodeSchema(node: FieldNode): Json {
  const { field } = node;
  const plain = plainSchema(node);
  const described = { description: describe(node), ...plain };
  if (!field.nullable) return described;
  const { description, ...rest } = described;
  return { description, anyOf: [{ type: 'null' }, rest] };
}

function plainSchema(node: FieldNode): Json {
  const { field } = node;
  const { low, high } = field;
  switch (field.kind) {
    case 'object':
      return {
        type: 'object',
        additionalProperties: false,
        required: [...node.children].filter(([, child]) => !child.field.optional).map(([key]) => key),
        properties: Object.fromEntries([...node.children].map(([key, child]) => [key, nodeSchema(child)])),
      };
    case 'list':
      return { type: 'array', minItems: low, maxItems: high, items: node.item === null ? {} : nodeSchema(node.item) };
    case 'number':
      return { type: 'number', minimum: low, maximum: high };
    case 'text':
      return { type: 'string', minLength: low, maxLength: high, pattern: textPattern };
    case 'id':
      return { type: 'string', minLength: low, maxLength: high, pattern: idPattern };
    case 'word':
      return { type: 'string', enum: field.words };
    case 'constant':
      return { const: field.words?.[0] };
    case 'flag':
      return { type: 'boolean' };
  }
}

function describe(node: FieldNode): string {
  const { field } = node;
  const said = field.say.charAt(0).toUpperCase() + field.say.slice(1);
  const limit = field.kind === 'number' ? `: ${allowedInWords(field)}` : '';
  return `${said}${limit}.${field.fix === '' ? '' : ` ${field.fix}`}`;
}
