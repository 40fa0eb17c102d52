/** The sheet as it will come out of the printer, and the button that prints it. */
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import type { SheetReport } from '../job/sheet.ts'
import { sheetForeign, sheetStale, sheetState, startSheet, stopSheet } from '../store/sheet.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { BenchOpening } from './bench-opening.tsx'

/** A shadow of its own, so that the style of the paper and that of the page leave each other alone. */
function Paper({ report: { markup, style } }: { readonly report: SheetReport }) {
  const place = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const element = place.current
    if (!element) return
    const shadow = element.shadowRoot ?? element.attachShadow({ mode: 'open' })
    const styles = new CSSStyleSheet()
    styles.replaceSync(style)
    shadow.adoptedStyleSheets = [styles]
    shadow.innerHTML = markup
    const paper = shadow.querySelector<HTMLElement>('.sheet')
    const view = element.closest('.sheet-view')
    const scaleDown = () => {
      // the paper keeps its millimetres; a narrow screen shows it smaller
      element.style.setProperty('--shrink', '1')
      const place = element.parentElement
      const wide = paper?.offsetWidth ?? 0
      if (wide === 0 || place === null || view === null) return
      const { paddingLeft, paddingRight } = getComputedStyle(place)
      const room = view.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight) - 4
      element.style.setProperty('--shrink', String(Math.min(1, room / wide)))
    }
    scaleDown()
    const observer = new ResizeObserver(scaleDown)
    if (view) observer.observe(view)
    return () => observer.disconnect()
  }, [markup, style])
  return <div class="sheet-paper" ref={place} />
}

export function SheetView() {
  const state = sheetState.value
  const foreign = sheetForeign.value
  useEffect(() => {
    if (sheetState.peek().kind === 'none' || sheetStale.peek() || foreign) startSheet()
  }, [foreign])
  return (
    <section class="sheet-view">
      <BenchOpening drawing="sheet" drawn={state.kind !== 'done'}>
        <div class="sheet-keys">
          {state.kind === 'running' ? (
            <>
              <p>{say`The sheet is being made.`}</p>
              <progress aria-label={say`Sheet made so far`} max={1} value={state.fraction} />
              <button type="button" onClick={stopSheet}>
                {say`Stop`}
              </button>
            </>
          ) : state.kind === 'done' && !sheetStale.value ? (
            <button type="button" class="sheet-print chief" onClick={() => print()}>
              {say`Print the sheet`}
            </button>
          ) : (
            <button type="button" class="chief" onClick={startSheet}>
              {say`Make the sheet anew`}
            </button>
          )}
          {state.kind === 'done' && sheetStale.value ? (
            <p class="note">{say`The design has been changed since: this sheet shows it as it was.`}</p>
          ) : null}
          {state.kind === 'refused' ? <p class="note">{told(state.reason)}</p> : null}
          <p class="note">{say`One page, on A4 or Letter alike. Print it at 100 %, so that its scales hold.`}</p>
        </div>
      </BenchOpening>
      {state.kind === 'done' ? (
        <div class="sheet-place">
          <Paper report={state.report} />
        </div>
      ) : null}
    </section>
  )
}
