import { useEffect, useState } from 'preact/hooks';

/** Keeps the device's screen on where the browser can (over plain HTTP most cannot). `false`: it does not. */
export function useWakeLock(): boolean {
  const [held, setHeld] = useState(false);
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    const hold = (): void => {
      if (document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
      void navigator.wakeLock.request('screen').then(
        (got) => {
          lock = got;
          setHeld(true);
          got.addEventListener('release', () => setHeld(false));
        },
        () => setHeld(false),
      );
    };
    hold();
    document.addEventListener('visibilitychange', hold);
    return () => {
      document.removeEventListener('visibilitychange', hold);
      void lock?.release();
    };
  }, []);
  return held;
}
