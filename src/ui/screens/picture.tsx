import { Page } from '../parts/page.tsx';

export function Picture() {
  return (
    <Page tab="picture">
      <h1 class="section">Picture</h1>
    </Page>
  );
}
