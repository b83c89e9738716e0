import type { FactPath } from '../diagnostics/fact-path.js';
import { houseJsonSchema, type SchemaNode } from './json-schema.js';

/** The schema nodes that may describe the value at a path: several where a field has a short and a long form. */
function fieldsAt(path: FactPath): readonly SchemaNode[] {
  let nodes: SchemaNode[] = spread(houseJsonSchema());
  for (const part of path) {
    nodes = nodes.flatMap((node) => {
      const next =
        typeof part === 'number'
          ? (node.prefixItems?.[part] ?? node.items)
          : (node.properties?.[part] ??
            (typeof node.additionalProperties === 'object' ? node.additionalProperties : undefined));
      return next === undefined ? [] : spread(next);
    });
  }
  return nodes;
}

/** A node and the branches of its `anyOf`, all the way down. */
function spread(node: SchemaNode): SchemaNode[] {
  return [node, ...(node.anyOf ?? []).flatMap(spread)];
}

/** Words that may stand below a path, without those of a fact's long form where it also has a plain one. */
export function wordsAt(path: FactPath): string[] {
  return [...new Set(fieldsAt(path).flatMap((node) => Object.keys(node.properties ?? {})))];
}

export function describedAt(path: FactPath): {
  kind: string | undefined;
  example: string | undefined;
  about: string | undefined;
  choices: readonly string[];
  takesText: boolean;
} {
  const nodes = fieldsAt(path);
  const first = <K extends keyof SchemaNode>(key: K): SchemaNode[K] | undefined =>
    nodes.find((node) => node[key] !== undefined && node[key] !== '')?.[key];
  return {
    kind: first('kind'),
    example: first('example'),
    about: first('description'),
    choices: nodes.flatMap((node) => node.enum ?? []),
    takesText: nodes.some((node) => node.kind === 'text' || node.kind === 'zip' || node.kind === 'state'),
  };
}

/** Whether the group that holds the word can't do without it, in each of its forms. */
export function isRequired(path: FactPath): boolean {
  const word = String(path.at(-1));
  const groups = fieldsAt(path.slice(0, -1)).filter((node) => node.properties?.[word] !== undefined);
  return groups.length > 0 && groups.every((node) => node.required?.includes(word) === true);
}
