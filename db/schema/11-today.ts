/**
 * Schema 11: what the desk asks all day, each by an index that holds only the rows in question, so that twenty years of
 * others cost nothing. When a car went is kept beside its order's balance, by triggers like the balance itself (see
 * schema 5); `verify` compares it again. Nothing here is a record.
 */
const sql = `
ALTER TABLE order_balance ADD COLUMN gone_at INTEGER;
UPDATE order_balance SET gone_at = (SELECT handed_over_at FROM work_order WHERE id = order_balance.work_order_id);
DROP TRIGGER order_balance_new;
CREATE TRIGGER order_balance_new AFTER INSERT ON work_order BEGIN
  INSERT INTO order_balance (work_order_id, owed, invoiced, gone_at) VALUES (new.id, 0, 0, new.handed_over_at);
END;
CREATE TRIGGER order_balance_gone AFTER UPDATE OF handed_over_at ON work_order BEGIN
  UPDATE order_balance SET gone_at = new.handed_over_at WHERE work_order_id = new.id;
END;
-- gone without an invoice: none for those that left without work, and these are let go of by their day
CREATE INDEX order_balance_gone ON order_balance (gone_at) WHERE invoiced = 0 AND gone_at IS NOT NULL;

-- not gone, and not called off before it came
CREATE INDEX work_order_here ON work_order (opened_at) WHERE handed_over_at IS NULL AND (cancelled_at IS NULL OR arrived_at IS NOT NULL);
CREATE INDEX work_order_called_off ON work_order (cancelled_at) WHERE handed_over_at IS NULL AND arrived_at IS NULL AND cancelled_at IS NOT NULL;

CREATE INDEX payment_at ON payment (at);
CREATE INDEX part_bin ON part (bin, number);
CREATE INDEX awaited_open ON awaited (due_on) WHERE arrived_at IS NULL;
`;

export const today = { version: 11, name: 'today', sql };
