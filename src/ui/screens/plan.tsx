import { Page } from '../parts/page.tsx';

export function Plan() {
  return (
    <Page tab="plan">
      <h1 class="section">Plan</h1>
    </Page>
  );
}
