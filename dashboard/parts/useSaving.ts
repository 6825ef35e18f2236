import { useState } from 'preact/hooks';
import type { ChangeAlarmSettings } from '../../hub/contract/index.ts';
import { changeAlarmSettings } from '../alarmState.ts';
import { words } from '../words.ts';

/** Saves a part of the settings, and says what became of it. */
export function useSaving() {
  const text = words.alarms.sending;
  const [saving, setSaving] = useState(false);
  const [said, setSaid] = useState('');
  const save = async (change: ChangeAlarmSettings): Promise<boolean> => {
    if (saving) return false;
    setSaving(true);
    setSaid('');
    try {
      await changeAlarmSettings(change);
      setSaid(text.saved);
      return true;
    } catch (error) {
      setSaid(text.notSaved(error instanceof Error ? error.message : String(error)));
      return false;
    } finally {
      setSaving(false);
    }
  };
  return { saving, said, save };
}
