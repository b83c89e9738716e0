/** A text as it can be typed behind a colon: bare where YAML reads it back as it stands, else in quotes. */
export function typedInYaml(text: string, inBrackets = false): string {
  const plain =
    /^[\p{L}\p{N}]/u.test(text) &&
    !/:(\s|$)|\s#|[\p{Cc}]/u.test(text) &&
    !(inBrackets && /[,[\]{}]/.test(text)) &&
    !/^(true|false|null|[\d.,_+-]+|0[xo][\da-f]+|\d[\d.]*e[+-]?\d+)$/i.test(text);
  if (plain) return text;
  return text.includes('"') && !/['\p{Cc}]/u.test(text) ? `'${text}'` : JSON.stringify(text);
}
