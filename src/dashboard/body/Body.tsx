import { useEffect, useRef } from 'preact/hooks';
import { useFeed, useFeedPart, useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { FigureLegend } from './FigureLegend.tsx';
import { FigureDrawing } from './drawing.ts';
import { followHands, newLiveHands } from './live.ts';
import { viewBoxOf } from './scene.ts';

const VIEWS = ['faceOn', 'downTheLine'] as const;

function Views() {
  const feed = useFeed();
  const leftHanded = useSection('hand') === 'left';
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const pictures = [...(place.current?.querySelectorAll('svg') ?? [])];
    const drawings = pictures.map((svg, i) => new FigureDrawing(svg, VIEWS[i]!, leftHanded));
    const live = newLiveHands();
    const draw = ({ view } = feed.state()): void => {
      if (view === null) return;
      const hands = followHands(live, view);
      for (const drawing of drawings) drawing.draw(view.pose, hands, view.addressPose);
    };
    draw();
    return feed.onFrame(draw);
  }, [feed, leftHanded]);
  return (
    <div class="body-views" ref={place}>
      {VIEWS.map((view) => (
        <figure key={view} class="body-view">
          <svg
            class="body-figure"
            viewBox={viewBoxOf(view, leftHanded, 'practice')}
            role="img"
            aria-label={t.body[view]}
          />
          <figcaption>{t.body[view]}</figcaption>
        </figure>
      ))}
    </div>
  );
}

/** The figure from the measured segments in two views, named as camera views are. */
export function Body() {
  const known = useFeedPart(({ view }) => view?.pose !== null && view?.pose !== undefined);
  const ghost = useSection('addressPose') !== null;
  return (
    <section class="panel body" aria-labelledby="body-label">
      <h2 id="body-label" class="label">
        {t.body.title}
      </h2>
      {known ? <Views /> : <p class="empty">{t.body.none}</p>}
      <FigureLegend short ghost={known && ghost ? t.body.ghost : null} />
    </section>
  );
}
