/**
 * Runs in the reader's browser: lays the two photos of a pair over each other, with a slider that says how much of
 * each is seen, and a button that puts them side by side again. Without it the pair stands side by side.
 *
 * A plain script: it is asked for with `defer`, since pages are read from a disk, where modules don't load. It makes
 * all controls itself, so that a page has nothing dead in it. It moves nothing by itself.
 */
(() => {
  /** Pointer movement, in CSS pixels, from which on a press on a photo is a drag and no longer follows its link. */
  const DRAG_PX = 4;
  const LAID = 'laid';
  const BESIDE = 'beside';
  /** The half that the style sheet hides. */
  const UNSEEN = '.laid.only-after .half:first-child, .laid.only-before .half + .half';
  const SAY_BESIDE = 'Put side by side';
  const SAY_LAID = 'Lay one over the other';

  /** Pairs of this page so far: their controls are named by parts that need ids. */
  let count = 0;

  class Pair {
    private readonly figure: HTMLElement;
    private readonly shots: HTMLElement;
    private readonly slider = document.createElement('input');
    private readonly rail = document.createElement('div');
    private readonly choice = document.createElement('button');
    /** Where a press on the photos began, from the window's left edge; undefined where none lasts. */
    private pressedAt: number | undefined;
    private dragging = false;

    constructor(figure: HTMLElement, shots: HTMLElement) {
      this.figure = figure;
      this.shots = shots;
      this.makeRail();
      this.makeChoice();
      this.nameControls();
      this.listen();
      this.layOver(true);
      this.show(50);
    }

    private makeRail(): void {
      const { slider, rail } = this;
      slider.type = 'range';
      slider.min = '0';
      slider.max = '100';
      // Keys still go by a hundredth; a finger that the slider itself follows is not held to hundredths.
      slider.step = 'any';
      slider.setAttribute('aria-label', 'Line between before, on its left, and after, on its right');
      rail.className = 'rail';
      rail.append(part('scale'), slider, part('cursor'));
    }

    private makeChoice(): void {
      this.choice.type = 'button';
      this.choice.className = 'choice';
      this.shots.append(this.rail, this.choice);
    }

    /** By what they do and the pair's caption: in a list of a page's controls, each must say whose it is. */
    private nameControls(): void {
      const caption = this.figure.querySelector('figcaption');
      if (caption === null) return;
      count += 1;
      caption.id ||= `pair-caption-${count}`;
      this.slider.id = `pair-slider-${count}`;
      this.choice.id = `pair-choice-${count}`;
      for (const control of [this.slider, this.choice])
        control.setAttribute('aria-labelledby', `${control.id} ${caption.id}`);
    }

    private listen(): void {
      this.slider.addEventListener('input', () => this.show(Number(this.slider.value)));
      this.choice.addEventListener('click', () => this.layOver(this.figure.classList.contains(BESIDE)));
      this.rail.addEventListener('pointerdown', (event) => {
        if (event.button !== 0) return;
        // The press would take the focus from the slider again.
        event.preventDefault();
        this.slider.focus({ preventScroll: true });
        this.rail.setPointerCapture(event.pointerId);
        this.follow(event);
      });
      this.rail.addEventListener('pointermove', (event) => {
        if (this.rail.hasPointerCapture(event.pointerId)) this.follow(event);
      });
      this.listenToPhotos();
    }

    /** A drag on the photos moves the line; a press alone follows the link to the photo, as everywhere. */
    private listenToPhotos(): void {
      const { shots } = this;
      shots.addEventListener('pointerdown', (event) => {
        this.dragging = false;
        // In the slit between the two there is no photo.
        const onPhoto = event.target instanceof HTMLImageElement || event.target === shots;
        this.pressedAt = onPhoto && event.button === 0 && this.isLaid ? event.clientX : undefined;
      });
      shots.addEventListener('pointermove', (event) => {
        if (this.pressedAt === undefined) return;
        if (!this.dragging && Math.abs(event.clientX - this.pressedAt) < DRAG_PX) return;
        if (!this.dragging) shots.setPointerCapture(event.pointerId);
        this.dragging = true;
        this.follow(event);
      });
      for (const ending of ['pointerup', 'pointercancel'] as const)
        shots.addEventListener(ending, () => {
          this.pressedAt = undefined;
        });
      shots.addEventListener('dragstart', (event) => {
        if (this.isLaid) event.preventDefault();
      });
      shots.addEventListener(
        'click',
        (event) => {
          // A click by keyboard has no count, and comes from no drag.
          if (this.dragging && event.detail > 0) event.preventDefault();
          this.dragging = false;
        },
        true,
      );
    }

    private get isLaid(): boolean {
      return this.figure.classList.contains(LAID);
    }

    private layOver(laid: boolean): void {
      this.figure.classList.toggle(LAID, laid);
      this.figure.classList.toggle(BESIDE, !laid);
      this.choice.textContent = laid ? SAY_BESIDE : SAY_LAID;
      if (laid) this.keepFocus();
      else if (document.activeElement === this.slider) this.choice.focus({ preventScroll: true });
    }

    private follow(event: PointerEvent): void {
      const { left, width } = this.rail.getBoundingClientRect();
      const share = width === 0 ? 0 : (event.clientX - left) / width;
      this.show(Math.min(1, Math.max(0, share)) * 100);
    }

    /** Puts the line at so many hundredths of the width, and says it in words. */
    private show(seam: number): void {
      const value = Math.round(seam);
      this.figure.style.setProperty('--seam', String(Math.round(seam * 100) / 100));
      this.slider.value = String(value);
      this.slider.setAttribute('aria-valuetext', wordsFor(value));
      // What isn't seen is not there for the keyboard and for reading aloud either, nor is the word above it.
      this.figure.classList.toggle('only-after', value === 0);
      this.figure.classList.toggle('only-before', value === 100);
      this.keepFocus();
    }

    /** The focus would be lost with the photo that is no longer seen: the slider, which brings it back, takes it. */
    private keepFocus(): void {
      const unseen = this.figure.querySelector(UNSEEN);
      if (unseen?.contains(document.activeElement)) this.slider.focus({ preventScroll: true });
    }
  }

  function part(name: string): HTMLElement {
    const made = document.createElement('span');
    made.className = name;
    made.setAttribute('aria-hidden', 'true');
    return made;
  }

  function wordsFor(seam: number): string {
    if (seam === 0) return 'only after is seen';
    if (seam === 100) return 'only before is seen';
    return `${seam} percent before, ${100 - seam} percent after`;
  }

  for (const figure of document.querySelectorAll<HTMLElement>('figure.pair')) {
    const shots = figure.querySelector<HTMLElement>('.shots');
    if (shots !== null) new Pair(figure, shots);
  }
})();
