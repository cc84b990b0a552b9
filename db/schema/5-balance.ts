/**
 * Schema 5: what is open on each order's papers, kept so that nobody adds up twenty years to know who owes. Positive is
 * owed to the garage; a deposit before the invoice stands below zero. Nothing here is a record: triggers keep it in the
 * same transaction, `verify` adds it up again, and it can be made anew from papers and payments.
 */
const OWED = `coalesce((SELECT sum(CASE kind WHEN 'invoice' THEN gross ELSE -gross END) FROM paper
    WHERE work_order_id = work_order.id AND kind IN ('invoice', 'credit-note')), 0)
  - coalesce((SELECT sum(amount) FROM payment WHERE work_order_id = work_order.id), 0)`;

const sql = `
CREATE TABLE order_balance (
  work_order_id TEXT PRIMARY KEY REFERENCES work_order, owed INTEGER NOT NULL,
  invoiced INTEGER NOT NULL CHECK (invoiced IN (0, 1))
) STRICT;
INSERT INTO order_balance SELECT id, ${OWED},
  EXISTS (SELECT 1 FROM paper WHERE work_order_id = work_order.id AND kind = 'invoice') FROM work_order;
CREATE INDEX order_balance_owed ON order_balance (work_order_id) WHERE owed <> 0;
CREATE INDEX order_balance_open ON order_balance (work_order_id) WHERE invoiced = 0;

CREATE TRIGGER order_balance_new AFTER INSERT ON work_order BEGIN
  INSERT INTO order_balance VALUES (new.id, 0, 0);
END;
CREATE TRIGGER order_balance_invoice AFTER INSERT ON paper WHEN new.kind = 'invoice' BEGIN
  UPDATE order_balance SET owed = owed + new.gross, invoiced = 1 WHERE work_order_id = new.work_order_id;
END;
CREATE TRIGGER order_balance_credit AFTER INSERT ON paper WHEN new.kind = 'credit-note' BEGIN
  UPDATE order_balance SET owed = owed - new.gross WHERE work_order_id = new.work_order_id;
END;
CREATE TRIGGER order_balance_payment AFTER INSERT ON payment BEGIN
  UPDATE order_balance SET owed = owed - new.amount WHERE work_order_id = new.work_order_id;
END;
`;

export const balance = { version: 5, name: 'balance', sql };
