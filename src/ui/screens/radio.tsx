import { Page } from '../parts/page.tsx';

export function Radio() {
  return (
    <Page tab="radio">
      <h1 class="section">Radio</h1>
    </Page>
  );
}
