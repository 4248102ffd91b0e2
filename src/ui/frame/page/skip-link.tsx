import { hrefOf, route } from '../route.ts';

/** Leads the keyboard past the head of every page. The address names a screen, so it cannot name a place in it. */
export function SkipLink() {
  return (
    <a
      class="unseen skip-link"
      href={hrefOf(route.value)}
      onClick={(event) => {
        event.preventDefault();
        document.querySelector<HTMLElement>('main')?.focus();
      }}
    >
      Skip to content
    </a>
  );
}
