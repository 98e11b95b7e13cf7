// Runs within a measured page before anything of its own: notes when it can count again, and times what follows a change.
/* global document, innerHeight, performance, requestAnimationFrame, MutationObserver, MessageChannel */
const clock = { countsAt: null, change };
globalThis.pageClock = clock;

new MutationObserver((_, watching) => {
  if (document.readyState === 'loading') return;
  if (document.getElementById('carried-season') !== null) return;
  clock.countsAt = performance.now();
  watching.disconnect();
}).observe(document, { childList: true, subtree: true });

/** Resumes once the next frame has been drawn. */
function nextFrame() {
  return new Promise((resume) => {
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = resume;
      port2.postMessage(null);
    });
  });
}

function until(isSo) {
  if (isSo()) return Promise.resolve();
  return new Promise((resume) => {
    const watching = new MutationObserver(() => {
      if (!isSo()) return;
      watching.disconnect();
      resume();
    });
    watching.observe(document.body, { attributes: true, childList: true, subtree: true });
  });
}

/** Gives a control another value, and says how long what is in sight takes until it is drawn, and the whole page. */
async function change(name, value) {
  const form = document.getElementById('choice');
  const control = form.elements.namedItem(name);
  // A hand takes at least a second from reaching for a control to changing it.
  control.focus({ preventScroll: true });
  await new Promise((resume) => setTimeout(resume, 1000));
  const inSight = [...document.querySelectorAll('[data-part]')]
    .filter((part) => {
      const { top, bottom } = part.getBoundingClientRect();
      return bottom > 0 && top < innerHeight;
    })
    .map((part) => part.dataset.part);
  const isStale = (key) => document.querySelector(`[data-part="${key}"][data-stale]`) !== null;
  const started = performance.now();
  control.value = value;
  control.dispatchEvent(new Event('input', { bubbles: true }));
  await until(() => form.hasAttribute('aria-busy'));
  await until(() => !inSight.some(isStale));
  await nextFrame();
  const sight = performance.now() - started;
  await until(() => !form.hasAttribute('aria-busy'));
  await nextFrame();
  return { sight, whole: performance.now() - started, parts: inSight.length };
}
