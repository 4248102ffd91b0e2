import type { OutgoingFile, SendingDevice } from '../../../app/sharing.ts';

/** On an iPhone or iPad: true if opened from the home screen, false in a browser tab. */
const standalone = (): boolean | undefined => (navigator as { standalone?: boolean }).standalone;

/** In a browser tab on an iPhone: data written here does not carry over to the home-screen app. */
export const isTabOnIphone = (): boolean => standalone() === false;

const asFile = ({ name, type, content }: OutgoingFile): File => new File([content], name, { type });

/** How this browser can send files. */
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
