import { createHash } from 'node:crypto';

/** The page's content security policy: nothing from anywhere, but its own style and script by their SHA-256. */
export function contentPolicy(style: string, script: string): string {
  const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return [
    "default-src 'none'",
    `style-src ${hash(style)}`,
    `script-src ${hash(script)}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}
