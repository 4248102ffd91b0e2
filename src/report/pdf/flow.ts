import { MARGIN } from './paper.ts';
import type { Pen } from './pen.ts';

/** Where on the pages the next thing stands. */
export class Flow {
  readonly pen: Pen;
  y: number = MARGIN.top;
  /** Drawn at the top of every page that a long section runs onto. */
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

  /** Turns the page unless `height` points are left. What is taller than a page starts where it is. */
  need(height: number): void {
    if (height > this.room && this.y > MARGIN.top) this.newPage();
  }
}
