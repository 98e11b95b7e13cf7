import { createHash } from 'node:crypto';

/** The page's content security policy: nothing from anywhere, but its own style and scripts by their SHA-256. */
export function contentPolicy(style: string, scripts: readonly string[]): string {
  const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return [
    "default-src 'none'",
    `style-src ${hash(style)}`,
    `script-src ${scripts.map(hash).join(' ')}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}
