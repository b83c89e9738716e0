import { z } from 'zod';
import { houseSchema } from './house.js';

/** A node of the JSON Schema, as far as this program reads it. */
export interface SchemaNode {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly kind?: string;
  readonly example?: string;
  readonly fact?: boolean;
  readonly const?: unknown;
  readonly enum?: readonly string[];
  readonly default?: unknown;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly items?: SchemaNode;
  readonly prefixItems?: readonly SchemaNode[];
  readonly additionalProperties?: SchemaNode | boolean;
  readonly anyOf?: readonly SchemaNode[];
}

let made: SchemaNode | undefined;

/** The JSON Schema (2020-12) of what someone writes; editors complete from it. */
export function houseJsonSchema(): SchemaNode {
  made ??= {
    ...(z.toJSONSchema(houseSchema, { io: 'input', target: 'draft-2020-12' }) as SchemaNode),
    ...{ title: 'Facts of one house', $id: 'urn:sillplate:house' },
  };
  return made;
}

/** `houseJsonSchema` for one file of a folder: any top-level words, none of them required, since the facts may be split. */
export function fileJsonSchema(): SchemaNode {
  const { required: _dropped, ...rest } = houseJsonSchema();
  return rest;
}
