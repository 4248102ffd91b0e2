import { useEffect, useState } from 'preact/hooks';
import { type OutgoingFile, routeFor, sendFiles } from '../../app/sharing.ts';
import { safeStem } from '../../day/files/safe-name.ts';
import type { ReportModel } from '../../report/model.ts';
import { dayPictures } from '../../report/printed/day-picture.ts';
import { pictureFile } from '../../report/printed/picture-svg.ts';
import { reportSubject } from '../../report/printed/report-name.ts';
import { complain, tell } from '../frame/messages.ts';
import { device } from '../frame/sending/device.ts';
import { Button } from '../kit/button.tsx';
import { pictureImage } from './picture-image.ts';

interface SaveProps {
  readonly model: ReportModel;
}

const LONGEST_NAME = 90;

/** Shares or downloads the whole picture. It is made before the tap: the share sheet only opens straight from one. */
export function SavePicture({ model }: SaveProps) {
  const [file, setFile] = useState<OutgoingFile | null>(null);
  useEffect(() => {
    let wanted = true;
    const name = safeStem(`${reportSubject(model)} picture of the day`, LONGEST_NAME);
    void pictureImage(pictureFile(dayPictures(model), reportSubject(model)), name).then(
      (made) => wanted && setFile(made),
    );
    return () => {
      wanted = false;
    };
  }, [model]);
  const save = async (): Promise<void> => {
    if (!file) return;
    const route = routeFor(device, [file]);
    const result = await sendFiles(device, route, [file], file.name);
    if (!result.ok) complain(result.problem);
    else if (result.value.sent) tell(route === 'share' ? 'Picture shared' : 'Picture saved');
  };
  return (
    <Button disabled={!file} onClick={() => void save()}>
      {file && routeFor(device, [file]) === 'share' ? 'Share' : 'Save'}
    </Button>
  );
}
