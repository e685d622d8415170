/** What reaches a person who does not look at the screen: a voice, a shake, and a screen that stays awake. */

export function sayAloud(text: string): void {
  if (!("speechSynthesis" in window)) return;
  window.speechSynthesis.cancel();
  window.speechSynthesis.speak(Object.assign(new SpeechSynthesisUtterance(text), { lang: "en" }));
}

/** Nothing where the device or the person does not allow it. */
export function shake(pattern: readonly number[] = [300, 150, 300]): void {
  if ("vibrate" in navigator) navigator.vibrate([...pattern]);
}

/** Keeps the screen awake, and takes hold again when the page comes back into sight. @returns what lets it sleep */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | undefined;
  let isOver = false;
  const hold = async () => {
    if (isOver || document.visibilityState === "hidden" || !("wakeLock" in navigator)) return;
    try {
      lock = await navigator.wakeLock.request("screen");
      if (isOver) await lock.release();
    } catch {
      // Low battery, or not allowed: the screen sleeps, and the clock goes on all the same.
    }
  };
  const comeBack = () => void hold();
  document.addEventListener("visibilitychange", comeBack);
  void hold();
  return () => {
    isOver = true;
    document.removeEventListener("visibilitychange", comeBack);
    void lock?.release().catch(() => undefined);
  };
}
