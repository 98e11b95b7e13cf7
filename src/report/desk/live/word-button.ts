/** A word that can be pressed. */
export function wordButton(said: string, press: () => void): HTMLButtonElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'word';
  button.textContent = said;
  button.addEventListener('click', press);
  return button;
}
