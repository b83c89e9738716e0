/**
 * Rewrites an instrumented file so that it tells not only which mutants a test passes by, but which ones would have made
 * another value there: a test can’t notice a mutant that never does. Where that can’t be asked without doing something twice
 * that may be done once, passing by counts.
 */
import ts from 'typescript';

const { factory } = ts;

/** Methods that change what they are called on, or that go on from where they stopped. */
const CHANGES = new Set(
  'push pop shift unshift splice sort reverse set add delete clear next fill copyWithin exec forget'.split(
    ' ',
  ),
);

/** The number of a switch, `stryMutAct_9fa48("12")`. @param {ts.Expression} node */
function switchOf(node) {
  if (!ts.isCallExpression(node) || !ts.isIdentifier(node.expression)) return undefined;
  if (node.expression.text !== 'stryMutAct_9fa48') return undefined;
  const [id] = node.arguments;
  return id !== undefined && ts.isStringLiteral(id) ? id.text : undefined;
}

/** Whether an expression can be worked out once more with nothing changed by it. @param {ts.Node} node @returns {boolean} */
function isRepeatable(node) {
  if (ts.isCallExpression(node)) {
    // A function of the program may write into what it is given; a method that is not of the list hardly does.
    const { expression } = node;
    if (!ts.isPropertyAccessExpression(expression) || CHANGES.has(expression.name.text)) return false;
  }
  if (
    ts.isNewExpression(node) ||
    ts.isAwaitExpression(node) ||
    ts.isYieldExpression(node) ||
    ts.isDeleteExpression(node) ||
    ts.isPostfixUnaryExpression(node) ||
    ts.isFunctionExpression(node) ||
    ts.isClassExpression(node) ||
    ts.isTaggedTemplateExpression(node) ||
    ts.isStatement(node)
  )
    return false;
  if (ts.isPrefixUnaryExpression(node)) {
    const { operator } = node;
    if (operator === ts.SyntaxKind.PlusPlusToken || operator === ts.SyntaxKind.MinusMinusToken) return false;
  }
  if (ts.isBinaryExpression(node)) {
    const { kind } = node.operatorToken;
    if (kind >= ts.SyntaxKind.FirstAssignment && kind <= ts.SyntaxKind.LastAssignment) return false;
  }
  return ts.forEachChild(node, (child) => (isRepeatable(child) ? undefined : true)) === undefined;
}

/** Whether only the truth of the value matters where it stands. @param {ts.Node} node */
function isCondition(node) {
  let inner = node;
  let outer = node.parent;
  while (outer !== undefined && ts.isParenthesizedExpression(outer)) [inner, outer] = [outer, outer.parent];
  if (outer === undefined) return false;
  if (ts.isIfStatement(outer) || ts.isWhileStatement(outer) || ts.isDoStatement(outer))
    return outer.expression === inner;
  if (ts.isConditionalExpression(outer) || ts.isForStatement(outer)) return outer.condition === inner;
  return ts.isPrefixUnaryExpression(outer) && outer.operator === ts.SyntaxKind.ExclamationToken;
}

/** @param {string} name @param {readonly ts.Expression[]} args */
const call = (name, args) => factory.createCallExpression(factory.createIdentifier(name), undefined, args);

/** @param {ts.Expression} node */
const unwrapped = (node) => {
  let inner = node;
  while (ts.isParenthesizedExpression(inner)) inner = inner.expression;
  return inner;
};

/** @type {ts.TransformerFactory<ts.SourceFile>} */
export const watchValues = (context) => {
  /** @param {ts.Node} node @returns {ts.Node} */
  const visit = (node) => {
    if (!ts.isConditionalExpression(node) || switchOf(node.condition) === undefined)
      return ts.visitEachChild(node, visit, context);
    /** @type {{ id: string, other: ts.Expression }[]} */
    const switched = [];
    /** @type {ts.Expression} */
    let last = node;
    for (;;) {
      last = unwrapped(last);
      if (!ts.isConditionalExpression(last)) break;
      const id = switchOf(last.condition);
      if (id === undefined) break;
      switched.push({ id, other: last.whenTrue });
      last = last.whenFalse;
    }
    if (!ts.isBinaryExpression(last) || last.operatorToken.kind !== ts.SyntaxKind.CommaToken)
      return ts.visitEachChild(node, visit, context);
    const own = last.right;
    const numbers = factory.createArrayLiteralExpression(
      switched.map(({ id }) => factory.createNumericLiteral(id)),
    );
    if (ts.isRegularExpressionLiteral(own))
      return call('__pattern', [
        own,
        numbers,
        factory.createArrayLiteralExpression(switched.map((one) => one.other)),
      ]);
    const others = switched.map(({ other }) =>
      isRepeatable(other)
        ? factory.createArrowFunction(
            undefined,
            undefined,
            [],
            undefined,
            factory.createToken(ts.SyntaxKind.EqualsGreaterThanToken),
            factory.createParenthesizedExpression(other),
          )
        : factory.createNull(),
    );
    return call(isCondition(node) ? '__truth' : '__value', [
      /** @type {ts.Expression} */ (ts.visitNode(own, visit)),
      numbers,
      ...others,
    ]);
  };
  return (file) => /** @type {ts.SourceFile} */ (ts.visitNode(file, visit));
};
