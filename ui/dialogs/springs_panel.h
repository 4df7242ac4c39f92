#pragma once

#include "ui/dialogs/record_panel.h"

class QLineEdit;

namespace coilbook {

/// The springs that have stood in the selected engine: what they are called and what they are.
class SpringsPanel : public RecordPanel {
    Q_OBJECT
public:
    SpringsPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    QLineEdit* m_label;
    QLineEdit* m_part;
    QLineEdit* m_batch;
    QLineEdit* m_note;
    QLineEdit* m_softening; ///< % of its force per 100 °C
};

} // namespace coilbook
