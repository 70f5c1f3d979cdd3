import { useEffect, useRef } from 'preact/hooks';
import { useFeed, useFeedPart, useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { FigureDrawing } from './drawing.ts';
import type { ViewName } from './project.ts';

function View({ view, title }: { view: ViewName; title: string }) {
  const feed = useFeed();
  const leftHanded = useSection('hand') === 'left';
  const svg = useRef<SVGSVGElement>(null);
  useEffect(() => {
    if (svg.current === null) return undefined;
    const drawing = new FigureDrawing(svg.current, view, leftHanded);
    drawing.draw(feed.state().view);
    return feed.onFrame((state) => drawing.draw(state.view));
  }, [feed, view, leftHanded]);
  return (
    <figure class="body-view">
      <svg
        ref={svg}
        class="body-figure"
        viewBox="-0.74 -0.92 1.48 1.46"
        role="img"
        aria-label={title}
      />
      <figcaption>{title}</figcaption>
    </figure>
  );
}

/** Two line figures from the measured segments, named as camera views are. */
export function Body() {
  const known = useFeedPart(({ view }) => view?.pose !== null && view?.pose !== undefined);
  const ghost = useSection('addressPose') !== null;
  return (
    <section class="panel body" aria-labelledby="body-label">
      <h2 id="body-label" class="label">
        {t.body.title}
      </h2>
      {known ? (
        <div class="body-views">
          <View view="faceOn" title={t.body.faceOn} />
          <View view="downTheLine" title={t.body.downTheLine} />
        </div>
      ) : (
        <p class="empty">{t.body.none}</p>
      )}
      <p class="fine">
        {known && ghost ? `${t.body.ghost}. ` : ''}
        {t.body.honest}
      </p>
    </section>
  );
}
