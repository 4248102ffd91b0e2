import { Page } from '../parts/page.tsx';

export function Upkeep() {
  return (
    <Page tab="upkeep">
      <h1 class="section">Upkeep</h1>
    </Page>
  );
}
