export { JoinScreen } from './join.tsx';
export { ShareScreen } from './share.tsx';
