import { PAIN_SIGNS, type PainSign } from '../../coaching/safetyTexts.ts';
import { t } from '../strings/strings.ts';

export interface Pain {
  /** 0-10; `null` until one was chosen. */
  readonly rating: number | null;
  readonly signs: readonly PainSign[];
}

export const NO_PAIN: Pain = { rating: null, signs: [] };

const RATINGS = Array.from({ length: 11 }, (_, i) => i);

function toggled(signs: readonly PainSign[], sign: PainSign): readonly PainSign[] {
  return signs.includes(sign) ? signs.filter((s) => s !== sign) : [...signs, sign];
}

function Signs({ pain, set }: { readonly pain: Pain; readonly set: (pain: Pain) => void }) {
  return (
    <fieldset class="signs">
      <legend>{t.ready.pain.signs}</legend>
      {PAIN_SIGNS.map((sign) => (
        <label key={sign}>
          <input
            type="checkbox"
            checked={pain.signs.includes(sign)}
            onChange={() => set({ ...pain, signs: toggled(pain.signs, sign) })}
          />
          {t.ready.pain.signNames[sign]}
        </label>
      ))}
    </fieldset>
  );
}

/** A rating of 0 to 10 and the signs that count at any rating. */
export function PainFields(props: {
  readonly title: string;
  readonly pain: Pain;
  readonly set: (pain: Pain) => void;
}) {
  const { title, pain, set } = props;
  return (
    <>
      <fieldset class="ratings">
        <legend>{title}</legend>
        <p class="fine">{t.ready.pain.scale}</p>
        <div class="rating-row">
          {RATINGS.map((rating) => (
            <label key={rating} class={pain.rating === rating ? 'rating chosen' : 'rating'}>
              <input
                type="radio"
                name={title}
                checked={pain.rating === rating}
                onChange={() => set({ ...pain, rating })}
              />
              {rating}
            </label>
          ))}
        </div>
      </fieldset>
      {(pain.rating ?? 0) > 0 && <Signs pain={pain} set={set} />}
    </>
  );
}
