import { MARGIN } from './paper.ts';
import type { Pen } from './pen.ts';

/** The current position on the pages. */
export class Flow {
  readonly pen: Pen;
  y: number = MARGIN.top;
  /** Called at the top of every page that a long section continues on. */
  onNewPage: (() => void) | undefined;

  constructor(pen: Pen) {
    this.pen = pen;
  }

  get left(): number {
    return MARGIN.left;
  }

  get right(): number {
    return this.pen.paper.width - MARGIN.right;
  }

  get width(): number {
    return this.right - this.left;
  }

  get bottom(): number {
    return this.pen.paper.height - MARGIN.bottom;
  }

  get room(): number {
    return this.bottom - this.y;
  }

  newPage(): void {
    this.pen.addPage();
    this.y = MARGIN.top;
    this.onNewPage?.();
  }

  /** Starts a new page unless `height` points are left. Anything taller than a page stays where it is. */
  need(height: number): void {
    if (height > this.room && this.y > MARGIN.top) this.newPage();
  }
}
