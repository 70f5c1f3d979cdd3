import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { type PageSound, useSound } from '../sound/pageSound.ts';
import type { ToneName } from '../sound/tones.ts';
import { t } from '../strings/strings.ts';
import { HandsFreePart } from './HandsFreePart.tsx';
import { FolderPart } from './FolderPart.tsx';
import { KeysPart } from './KeysPart.tsx';
import { LanguagePart } from './LanguagePart.tsx';
import { LookPart, UnitsPart } from './LookPart.tsx';
import { YouPart } from './YouPart.tsx';
import { setPrefs, usePrefs } from './prefs.ts';
import { hrefOf } from './router.ts';

const TONE_NAMES = Object.keys(t.sound.tone) as ToneName[];

function Slider(props: {
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly value: number;
  readonly text: string;
  readonly set: (value: number) => void;
}) {
  return (
    <label class="slider">
      <span>{props.label}</span>
      <input
        type="range"
        min={props.min}
        max={props.max}
        step="0.1"
        value={props.value}
        aria-valuetext={props.text}
        onInput={(event) => props.set(Number(event.currentTarget.value))}
      />
      <output>{props.text}</output>
    </label>
  );
}

function SoundPart({ sound }: { readonly sound: PageSound }) {
  const { volume, rate } = usePrefs();
  const { hasVoice } = useSound(sound);
  return (
    <fieldset>
      <legend>{t.sound.label}</legend>
      <Slider
        label={t.sound.volume}
        min={0}
        max={1}
        value={volume}
        text={`${Math.round(volume * 100)} %`}
        set={(value) => setPrefs({ volume: value })}
      />
      <Slider
        label={t.sound.rate}
        min={0.6}
        max={1.6}
        value={rate}
        text={`${t.decimal(rate, 1)} ×`}
        set={(value) => setPrefs({ rate: value })}
      />
      {!hasVoice && <p class="fine">{t.sound.noVoices}</p>}
      <p class="label">{t.sound.try}</p>
      <div class="chips">
        {TONE_NAMES.map((name) => (
          <button type="button" key={name} onClick={() => sound.tones.play(name, volume)}>
            {t.sound.tone[name]}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

/** Stands for the words where the bar is narrow. */
function Speaker({ silent }: { readonly silent: boolean }) {
  return (
    <svg class="by-sign" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d="M4 9.5v5h3.5l4.5 4v-13l-4.5 4Z" class="solid" />
      <path
        d={silent ? 'm16 9.5 5 5m0-5-5 5' : 'M15.5 9a4.5 4.5 0 0 1 0 6M18 6.5a8 8 0 0 1 0 11'}
      />
    </svg>
  );
}

function MuteButton({ sound }: { readonly sound: PageSound }) {
  const { muted } = usePrefs();
  const { unlocked } = useSound(sound);
  if (!unlocked) {
    return (
      <button type="button" key="locked" class="quiet attention" title={t.sound.lockedWhy}>
        <Speaker silent /> <span class="by-name">{t.sound.locked}</span>
      </button>
    );
  }
  return (
    <button
      type="button"
      key="mute"
      class="quiet"
      aria-pressed={muted}
      onClick={() => setPrefs({ muted: !muted })}
    >
      <Speaker silent={muted} />
      <span class="by-name">{muted ? t.sound.unmute : t.sound.mute}</span> <kbd>M</kbd>
    </button>
  );
}

/** Mute at once; volume, speech rate, look and keys one tap further, and before them what the bar has no room for. */
export function SettingsPanel({
  sound,
  children,
}: {
  readonly sound: PageSound;
  readonly children: ComponentChildren;
}) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <MuteButton sound={sound} />
      <details class="menu" onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{t.look.settings}</summary>
        <div class="menu-body">
          {children}
          <LanguagePart />
          <YouPart />
          <SoundPart sound={sound} />
          <LookPart />
          <UnitsPart />
          <HandsFreePart />
          {open && <FolderPart />}
          <a href={hrefOf('screen')}>{t.secondScreen.title}</a>
          <a href={hrefOf('help')}>{t.nav.help}</a>
          <KeysPart keys={t.look.keyList} />
        </div>
      </details>
    </>
  );
}
