import { useEffect, useRef } from 'preact/hooks';
import { useFeed, useFeedPart } from '../feed/hooks.ts';
import { watchPrefs } from '../shell/prefs.ts';
import { t } from '../strings/strings.ts';
import { type CurveColours, curveChart, showCurve } from './chart.ts';

function coloursOf(element: HTMLElement): CurveColours {
  const style = getComputedStyle(element);
  const colour = (name: string): string => style.getPropertyValue(name).trim();
  return { line: colour('--data'), grid: colour('--line'), text: colour('--ink-soft') };
}

function useCurves(canvas: { readonly current: HTMLCanvasElement | null }): void {
  const feed = useFeed();
  useEffect(() => {
    if (canvas.current === null) return undefined;
    const element = canvas.current;
    let chart = curveChart(element, coloursOf(element));
    const repaint = (): void => {
      chart.destroy();
      chart = curveChart(element, coloursOf(element));
      const { view } = feed.state();
      if (view !== null) showCurve(chart, view.curve);
    };
    const dark = matchMedia('(prefers-color-scheme: dark)');
    dark.addEventListener('change', repaint);
    const unwatch = watchPrefs(() => requestAnimationFrame(repaint));
    let drawn = feed.state().view?.curve;
    const undraw = feed.onFrame(({ view }) => {
      if (view === null || view.curve === drawn) return;
      drawn = view.curve;
      showCurve(chart, view.curve);
    });
    return () => {
      dark.removeEventListener('change', repaint);
      unwatch();
      undraw();
      chart.destroy();
    };
  }, [feed]);
}

function Plot() {
  const canvas = useRef<HTMLCanvasElement>(null);
  useCurves(canvas);
  return (
    <div class="plot">
      <ul class="plot-names">
        <li>{t.curves.flexion}</li>
        <li>{t.curves.turn}</li>
        <li>{t.curves.kept}</li>
      </ul>
      <div class="plot-canvas">
        <canvas ref={canvas} role="img" aria-label={t.curves.describe} />
      </div>
    </div>
  );
}

/** The last seconds of flexion, turn and arm rotation. */
export function Curves() {
  const known = useFeedPart(({ view }) => (view?.curve.timeS.length ?? 0) > 0);
  return (
    <section class="panel curves" aria-labelledby="curves-label">
      <h2 id="curves-label" class="label">
        {t.curves.title}
      </h2>
      {known ? <Plot /> : <p class="empty">{t.curves.none}</p>}
    </section>
  );
}
