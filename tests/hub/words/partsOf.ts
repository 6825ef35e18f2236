import ts from 'typescript';

/** What a file of words is made of, by paths such as `screens.today.title`. */
export type Parts = {
  /** Of tables, however deep. */
  readonly keys: Set<string>;
  /** What functions are given and use. */
  readonly used: Map<string, Set<string>>;
  /** Texts in quotes; figures in a template stand as `{}`. */
  readonly texts: Map<string, string[]>;
};

export function partsOf(file: ts.SourceFile): Parts {
  const parts: Parts = { keys: new Set(), used: new Map(), texts: new Map() };
  for (const statement of file.statements) {
    if (ts.isFunctionDeclaration(statement) && statement.name)
      walk(parts, statement, statement.name.text);
    if (ts.isVariableStatement(statement))
      for (const { name, initializer } of statement.declarationList.declarations)
        if (ts.isIdentifier(name) && initializer) walk(parts, initializer, name.text);
  }
  return parts;
}

function walk(parts: Parts, node: ts.Node, path: string) {
  if (ts.isObjectLiteralExpression(node)) {
    for (const one of node.properties) {
      if (ts.isSpreadAssignment(one)) continue;
      const key = `${path}.${one.name.getText().replace(/^'|'$/g, '')}`;
      parts.keys.add(key);
      walk(parts, ts.isPropertyAssignment(one) ? one.initializer : one, key);
    }
    return;
  }
  if (ts.isArrowFunction(node) || ts.isFunctionDeclaration(node)) {
    const given = new Set(node.parameters.flatMap(({ name }) => boundIn(name)));
    if (node.body && !parts.used.has(path)) parts.used.set(path, namesIn(node.body, given));
    // Objects made inside a function are what it hands on, not tables.
    for (const text of textsIn(node)) add(parts, path, text);
    if (node.body) inner(parts, node.body, path);
    return;
  }
  for (const text of textsIn(node)) add(parts, path, text);
  inner(parts, node, path);
}

/** Tables inside what is returned. */
function inner(parts: Parts, node: ts.Node, path: string) {
  const object = ts.isParenthesizedExpression(node) ? node.expression : node;
  const plain =
    ts.isAsExpression(object) || ts.isSatisfiesExpression(object) ? object.expression : object;
  if (ts.isObjectLiteralExpression(plain)) walk(parts, plain, path);
}

const add = (parts: Parts, path: string, text: string) =>
  parts.texts.set(path, [...(parts.texts.get(path) ?? []), text]);

function boundIn(name: ts.BindingName): string[] {
  if (ts.isIdentifier(name)) return [name.text];
  return name.elements.flatMap((one) => (ts.isOmittedExpression(one) ? [] : boundIn(one.name)));
}

function namesIn(body: ts.Node, wanted: ReadonlySet<string>) {
  const found = new Set<string>();
  const look = (node: ts.Node) => {
    if (ts.isIdentifier(node) && wanted.has(node.text)) found.add(node.text);
    ts.forEachChild(node, look);
  };
  look(body);
  return found;
}

function textsIn(within: ts.Node) {
  const texts: string[] = [];
  const look = (node: ts.Node) => {
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) {
      // What is compared, or names a type or a field, is read by nobody.
      const { parent } = node;
      const read =
        !ts.isLiteralTypeNode(parent) &&
        !ts.isBinaryExpression(parent) &&
        !ts.isElementAccessExpression(parent) &&
        !ts.isPropertyAssignment(parent) &&
        !ts.isGetAccessorDeclaration(parent) &&
        !ts.isCaseClause(parent) &&
        !ts.isCallExpression(parent);
      if (read || (ts.isPropertyAssignment(parent) && parent.initializer === node))
        texts.push(node.text);
    }
    if (ts.isTemplateExpression(node))
      texts.push(
        node.head.text + node.templateSpans.map(({ literal }) => `{}${literal.text}`).join(''),
      );
    if (!ts.isObjectLiteralExpression(node) || node !== within) ts.forEachChild(node, look);
  };
  look(within);
  return texts;
}
