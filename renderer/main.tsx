import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './frame/App.tsx';
import './look/fonts.css';
import './look/tokens.css';
import './look/base.css';
import './look/frame.css';
import './look/controls.css';
import './look/parts.css';
import './look/sheet-parts.css';

const root = document.getElementById('window');
if (root)
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
