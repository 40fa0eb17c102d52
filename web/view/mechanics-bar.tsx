/** A bar of how much of a limit is used; the words beside it tell the same. */

const length = 120
const height = 14
/** Where along it the limit stands. */
const limitAt = 84

export function MarginBar({ margin }: { readonly margin: number | undefined }) {
  if (margin === undefined) return null
  const past = margin < 1
  const used = margin > 0 ? limitAt / margin : length
  const end = Math.min(length - 2, Math.max(2, used))
  return (
    <svg
      class={`margin-bar${past ? ' is-past' : ''}`}
      width={length}
      height={height}
      viewBox={`0 0 ${length} ${height}`}
      aria-hidden="true"
    >
      <rect class="margin-track" x="0.5" y="3.5" width={limitAt} height={height - 7} />
      <rect class="margin-used" x="0.5" y="3.5" width={Math.min(end, limitAt)} height={height - 7} />
      {past ? <path class="margin-over" d={`M${limitAt} 3.5H${end}v${height - 7}H${limitAt}`} /> : null}
      <path class="margin-limit" d={`M${limitAt} 0.5V${height - 0.5}`} />
    </svg>
  )
}
