/** The names a module exports, read from its syntax tree. */
import ts from 'typescript'
import { treeOf } from './repository.ts'

export interface ExportedName {
  readonly name: string
  /** The declaration, absent for a name that is passed on from another module. */
  readonly node?: ts.Node
  /** Module specifier of a name that is passed on. */
  readonly from?: string
  readonly nameThere?: string
  /** The author marked it with `@internal`: not a part of the front door. */
  readonly internal: boolean
}

const isExported = (node: ts.Node): boolean =>
  ts.canHaveModifiers(node) &&
  (ts.getModifiers(node) ?? []).some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword)

/** The comment blocks that stand directly before a node, last one last. */
export function commentsBefore(node: ts.Node): string[] {
  const text = node.getSourceFile().text
  return (ts.getLeadingCommentRanges(text, node.getFullStart()) ?? []).map((range) =>
    text.slice(range.pos, range.end),
  )
}

/** Every exported name; `export *` gives the name `*`. */
export function exportedNames(path: string, text: string): ExportedName[] {
  const names: ExportedName[] = []
  for (const statement of treeOf(path, text).statements) {
    const internal = (commentsBefore(statement).at(-1) ?? '').includes('@internal')
    if (ts.isExportDeclaration(statement)) {
      const from =
        statement.moduleSpecifier && ts.isStringLiteral(statement.moduleSpecifier)
          ? { from: statement.moduleSpecifier.text }
          : {}
      if (statement.exportClause === undefined) names.push({ name: '*', internal, ...from })
      else if (ts.isNamespaceExport(statement.exportClause)) names.push({ name: '*', internal, ...from })
      else
        for (const element of statement.exportClause.elements)
          names.push({
            name: element.name.text,
            nameThere: (element.propertyName ?? element.name).text,
            internal,
            ...from,
          })
    } else if (ts.isExportAssignment(statement)) names.push({ name: 'default', node: statement, internal })
    else if (isExported(statement)) {
      if (ts.isVariableStatement(statement))
        for (const declaration of statement.declarationList.declarations)
          names.push({ name: declaration.name.getText(), node: declaration, internal })
      else if (
        ts.isFunctionDeclaration(statement) ||
        ts.isClassDeclaration(statement) ||
        ts.isInterfaceDeclaration(statement) ||
        ts.isTypeAliasDeclaration(statement) ||
        ts.isEnumDeclaration(statement)
      ) {
        const isDefault = (ts.getModifiers(statement) ?? []).some(
          (modifier) => modifier.kind === ts.SyntaxKind.DefaultKeyword,
        )
        names.push({
          name: isDefault ? 'default' : (statement.name?.text ?? 'default'),
          node: statement,
          internal,
        })
      }
    }
  }
  return names
}
