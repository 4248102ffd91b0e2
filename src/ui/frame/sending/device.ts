import type { OutgoingFile, SendingDevice } from '../../../app/sharing.ts';

/** Says `true` on an iPhone or iPad when the app was opened from the home screen, `false` in a tab there. */
const standalone = (): boolean | undefined => (navigator as { standalone?: boolean }).standalone;

/** In a tab on an iPhone: what is written here does not follow to the icon on the home screen. */
export const isTabOnIphone = (): boolean => standalone() === false;

const asFile = ({ name, type, content }: OutgoingFile): File => new File([content], name, { type });

/** This browser, as far as files can leave it. */
export const device: SendingDevice = {
  canShare: (files) => Boolean(navigator.canShare?.({ files: files.map(asFile) })),
  share: (files, title) => navigator.share({ files: files.map(asFile), title }),
  canDownload: standalone() !== true,
  download(file) {
    const url = URL.createObjectURL(asFile(file));
    const link = document.createElement('a');
    link.href = url;
    link.download = file.name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
  },
  copy: (text) => navigator.clipboard.writeText(text),
};
