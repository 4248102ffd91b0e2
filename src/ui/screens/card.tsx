import { Page } from '../parts/page.tsx';

export function Card() {
  return (
    <Page tab="card">
      <h1 class="section">Card</h1>
    </Page>
  );
}
