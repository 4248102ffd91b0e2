import type { SentReport } from '../../day/wrap/sent-reports.ts';
import { wordIn } from '../../shared/open-word.ts';

export function wayWords({ route, files }: SentReport): string {
  if (route === 'mail') return files.length > 0 ? 'downloaded as an email draft' : 'emailed as text';
  return wordIn({ share: 'shared', download: 'downloaded', copy: 'copied' }, route);
}
