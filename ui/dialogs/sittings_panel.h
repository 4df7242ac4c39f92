#pragma once

#include "ui/dialogs/record_panel.h"

class QComboBox;
class QLineEdit;

namespace coilbook {

/// Who inspected the selected engine, with which tester, and how warm the engine was.
class SittingsPanel : public RecordPanel {
    Q_OBJECT
public:
    SittingsPanel(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::vector<Line> lines() const override;
    void fill(const QUuid& record) override;
    [[nodiscard]] std::optional<Change> read(const QUuid& record,
                                             const std::optional<Authorship>& author) override;
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const override;

private:
    [[nodiscard]] Sitting sittingOf(const QUuid& record) const;
    void offerTesters(const std::optional<TesterId>& chosen);

    QComboBox* m_tester;
    QLineEdit* m_inspector;
    QLineEdit* m_temperature;
};

} // namespace coilbook
