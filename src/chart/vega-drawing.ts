import type { Element } from 'hast';
import { DOMParser } from 'linkedom';
import * as vega from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';
import { type Said, settleSvg } from './settle-svg.js';
import { textWidth } from './text-width.js';

/** What the library gives beyond its declared types. */
interface SceneParts {
  readonly SVGStringRenderer: new () => Renderer;
  readonly textMetrics: { width: (item: { fontSize?: number }, text: string) => number };
}

interface Renderer {
  initialize(element: null, width: number, height: number, origin: readonly [number, number]): Renderer;
  render(scene: unknown): Renderer;
  svg(): string;
}

/** The size of a drawing without its margins, and the margins, in pixels. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A drawing made from Vega-Lite without a canvas or a clock; the frame is fixed, so nothing depends on measured text. */
export function vegaDrawing(said: Said, specification: TopLevelSpec, frame: Frame): Element {
  const { SVGStringRenderer, textMetrics } = vega as unknown as SceneParts;
  textMetrics.width = (item, text) => textWidth(String(text ?? ''), item.fontSize ?? 11);
  vega.resetSVGDefIds();
  const warnings: string[] = [];
  const logger = new Listener(warnings);
  const view = new vega.View(vega.parse(compile(specification, { logger }).spec), { renderer: 'none', logger });
  view.run();
  const scene = view.scenegraph() as unknown as { readonly root: unknown };
  const width = frame.left + frame.width + frame.right;
  const height = frame.top + frame.height + frame.bottom;
  const text = new SVGStringRenderer()
    .initialize(null, width, height, [frame.left, frame.top])
    .render(scene.root)
    .svg();
  view.finalize();
  if (warnings.length > 0)
    throw new Error(`the drawing "${said.name}" was made with a warning: ${warnings.join('; ')}`);
  // The library declares its elements as its own kind; they are what `settleSvg` reads.
  const svg = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement as unknown;
  return settleSvg(svg as globalThis.Element, said);
}

/** Collects what the library complains of. */
class Listener implements vega.LoggerInterface {
  private readonly heard: string[];

  constructor(heard: string[]) {
    this.heard = heard;
  }

  level(level: number): this;
  level(): number;
  level(level?: number): this | number {
    return level === undefined ? 0 : this;
  }

  error(...said: unknown[]): this {
    this.heard.push(said.map(String).join(' '));
    return this;
  }

  warn(...said: unknown[]): this {
    return this.error(...said);
  }

  info(): this {
    return this;
  }

  debug(): this {
    return this;
  }
}
