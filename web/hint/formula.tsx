/** A formula in plain text, a line for each equation, what stands behind an underscore set low. */

/** `C_p`, `v_1`, `G_ij`: a letter and its index. */
const parts = (line: string) => line.split(/_(\p{L}+\d*|\d+)/u)

export function Formula({ text }: { readonly text: string }) {
  return (
    <span class="formula">
      {text.split('\n').map((line) => (
        <span key={line}>
          {parts(line).map((part, k) => (k % 2 === 0 ? part : <sub key={`${k}`}>{part}</sub>))}
        </span>
      ))}
    </span>
  )
}
