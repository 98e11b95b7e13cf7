import { inflated } from './inflate.js';

/**
 * Makes a page's choices ready, and loads what counts again: when the page has time for it, or at once where the address or
 * the reader asks for a choice. Its text runs only because the page's policy names it.
 */
export function loadEngine(): void {
  const form = document.querySelector<HTMLFormElement>('#choice');
  const carried = document.getElementById('carried-engine');
  if (form === null || carried === null) return;
  if (typeof DecompressionStream === 'undefined') {
    document.getElementById('shown')!.textContent = form.dataset['unable'] ?? '';
    return;
  }
  for (const control of form.elements) {
    control.removeAttribute('readonly');
    if (control instanceof HTMLSelectElement) control.disabled = false;
  }
  let loaded = false;
  const load = (): void => {
    if (loaded) return;
    loaded = true;
    void inflated(carried.textContent).then((text) => {
      const script = document.createElement('script');
      script.textContent = new TextDecoder().decode(text);
      carried.replaceWith(script);
    });
  };
  form.addEventListener('input', load, { once: true });
  form.addEventListener('submit', (event) => event.preventDefault());
  if (location.hash.includes('?')) load();
  else if ('requestIdleCallback' in window) requestIdleCallback(load);
  else setTimeout(load);
}
