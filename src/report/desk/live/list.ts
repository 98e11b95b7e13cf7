import { wordOf } from '../../live/say.js';

/** What the desk says of a notebook that was asked for: where it is, or why there is none. */
type Made = { readonly file: string } | { readonly refused: string };

const form = document.querySelector<HTMLFormElement>('#make')!;
const name = form.querySelector('input')!;
const wrong = document.getElementById('make-wrong')!;

function refuse(why: string): void {
  wrong.textContent = why;
  name.setAttribute('aria-invalid', 'true');
  name.focus();
}

async function make(): Promise<void> {
  try {
    const response = await fetch(location.pathname, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ make: name.value }),
    });
    if (!response.ok) return refuse(wordOf('away'));
    const made = (await response.json()) as Made;
    if ('refused' in made) return refuse(wordOf('notmade').replace('{}', made.refused));
    location.assign(encodeURIComponent(made.file));
  } catch {
    refuse(wordOf('away'));
  }
}

form.hidden = false;
form.addEventListener('submit', (event) => {
  event.preventDefault();
  void make();
});
name.addEventListener('input', () => {
  wrong.textContent = '';
  name.removeAttribute('aria-invalid');
});
