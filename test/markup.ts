/** What is wrong with markup, told by a reader of tags that is not ours. */
import ts from 'typescript'

/** Tags that do not close, or attributes that are not sound. */
export function markupFaults(svg: string): string[] {
  const file = ts.createSourceFile(
    'x.tsx',
    `const x = ${svg}`,
    ts.ScriptTarget.ES2022,
    true,
    ts.ScriptKind.TSX,
  )
  const { parseDiagnostics } = file as unknown as { parseDiagnostics: readonly ts.Diagnostic[] }
  return parseDiagnostics.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '))
}
